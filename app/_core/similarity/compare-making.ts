import type { Technique } from "../entries/vocabulary.ts";
import { plainLetters } from "../reading/plain-letters.ts";

/**
 * Techniques that are told apart only by those who know them well, often not at all on a worn mark, so that one instead
 * of the other speaks neither for nor against. From memory, common practice.
 */
const EASILY_TAKEN_FOR: readonly (readonly [Technique, Technique])[] = [
  ["stamped", "impressed"],
  ["incised", "etched"],
  ["printed", "painted"],
  ["woven", "embroidered"],
];

/** @returns null when either is not known, or one is easily taken for the other */
export function compareTechniques(known: Technique | null, recorded: Technique | null): boolean | null {
  if (known === null || recorded === null) return null;
  if (known === recorded) return true;
  if (known === "other" || recorded === "other") return null;
  const alike = EASILY_TAKEN_FOR.some((pair) => pair.includes(known) && pair.includes(recorded));
  return alike ? null : false;
}

/**
 * Materials agree when one ends with the other: "stoneware" and "salt-glazed stoneware". When they share only another
 * word ("silver", "silver plate"; "oak", "oak wood") nothing is said.
 * @returns null when either is not known, or they may or may not be the same
 */
export function compareMaterials(known: string, recorded: string): boolean | null {
  const [a, b] = [wordsOf(known), wordsOf(recorded)];
  if (a.length === 0 || b.length === 0) return null;
  const shared = Math.min(a.length, b.length);
  if (a.slice(-shared).join(" ") === b.slice(-shared).join(" ")) return true;
  return a.some((word) => b.includes(word)) ? null : false;
}

const wordsOf = (material: string): readonly string[] =>
  material
    .split(/[^\p{L}\p{M}\p{N}]+/u)
    .map((word) => plainLetters(word, { wildcards: false }))
    .filter((word) => word !== "");
