import { ONE, plainLetters } from "./plain-letters.ts";

/** What a recogniser read in a region: its lines, each letter with how sure it is, 0 to 1. */
export type MachineReading = {
  /** Along straight lines, or round the middle. */
  readonly along: "lines" | "ring";
  readonly lines: readonly (readonly { readonly sign: string; readonly sure: number }[])[];
};

/** Letters that a person may take over or leave. */
export type LettersProposal = {
  /** As it would be typed: `?` for a letter in doubt, `/` between lines. */
  readonly letters: string;
  readonly along: MachineReading["along"];
  /** The recogniser's own opinion of its letters, the mean, 0 to 1; no probability. */
  readonly sure: number;
  readonly doubtful: number;
  /** No letter is in doubt, and all are sure: then most proposals are right (scripts/measure-letters.ts). */
  readonly clear: boolean;
};

/** Letters less sure than this are written as `?`. */
const IN_DOUBT = 0.6;
/** Letters whose mean is above this, with none in doubt, are said to be read clearly. */
const CLEAR = 0.9;
/** A letter or two seen in an ornament are not worth looking at. */
const FEWEST = 2;

/**
 * Turns readings into proposals, in the same order: doubtful letters as `?`, lines without a sure letter left out, the
 * same letters proposed once.
 */
export function proposeLetters(readings: readonly MachineReading[]): readonly LettersProposal[] {
  const proposals: LettersProposal[] = [];
  const seen = new Set<string>();
  for (const { along, lines } of readings) {
    const legible = lines.filter((line) => line.some(({ sign, sure }) => sign !== " " && sure >= IN_DOUBT));
    const written = legible.map((line) =>
      line
        .map(({ sign, sure }) => (sign === " " || sure >= IN_DOUBT ? sign : ONE))
        .join("")
        .trim(),
    );
    const letters = written.join(" / ");
    const plain = plainLetters(letters, { wildcards: true });
    const doubtful = [...plain].filter((sign) => sign === ONE).length;
    if (plain.length - doubtful < FEWEST || seen.has(plain)) continue;
    seen.add(plain);
    const opinions = legible.flat().filter(({ sign }) => sign !== " ");
    const sure = opinions.reduce((sum, letter) => sum + letter.sure, 0) / opinions.length;
    proposals.push({ letters, along, sure, doubtful, clear: doubtful === 0 && sure >= CLEAR });
  }
  return proposals;
}
