import type { Kind, Technique } from "../entries/vocabulary.ts";
import type { Knowledge } from "../look-ups/knowledge.ts";
import { compareLetters, type LettersDegree } from "../reading/compare-letters.ts";
import { parseLegibleLetters } from "../reading/legible-letters.ts";
import { fitsSize, type Size } from "../sizes/compare-size.ts";
import { compareMaterials, compareTechniques } from "./compare-making.ts";
import { EVIDENCE } from "./evidence.ts";

/** What an entry records of what somebody looking up may know. */
export type EntryFacts = {
  /** Transcription, see EntryContent. */
  readonly words: string;
  readonly sizeMm: Size | null;
  readonly technique: Technique | null;
  readonly material: string;
  readonly kind: Kind;
};

type Stand = {
  readonly stands: "for" | "against";
  /** Natural log-odds, above 0 for it and below 0 against it. */
  readonly weight: number;
};

/** One thing known of the object, against what the entry records: what agrees, and what speaks against it. */
export type Finding = Stand &
  (
    | {
        readonly aspect: "letters";
        readonly recorded: string;
        readonly degree: LettersDegree;
        readonly differences: number;
      }
    | { readonly aspect: "size"; readonly recorded: Size }
    | { readonly aspect: "technique"; readonly recorded: Technique }
    | { readonly aspect: "material"; readonly recorded: string }
    | { readonly aspect: "kind"; readonly recorded: Kind }
  );

/** Compares what is known with what an entry records. What either leaves open is no finding. */
export function findingsOf(known: Knowledge, entry: EntryFacts): readonly Finding[] {
  const findings: Finding[] = [...lettersFinding(known, entry)];
  const { sizeMm, technique, material, kind } = entry;
  const fits = sizeMm && fitsSize({ width: known.widthMm, height: known.heightMm }, sizeMm);
  if (sizeMm && fits !== null) findings.push({ aspect: "size", recorded: sizeMm, ...standing("size", fits) });
  const sameTechnique = compareTechniques(known.technique, technique);
  if (technique && sameTechnique !== null)
    findings.push({ aspect: "technique", recorded: technique, ...standing("technique", sameTechnique) });
  const sameMaterial = compareMaterials(known.material, material);
  if (sameMaterial !== null)
    findings.push({ aspect: "material", recorded: material, ...standing("material", sameMaterial) });
  if (known.kind !== null)
    findings.push({ aspect: "kind", recorded: kind, ...standing("kind", known.kind === kind) });
  return findings;
}

function lettersFinding(known: Knowledge, { words }: EntryFacts): readonly Finding[] {
  const read = parseLegibleLetters(known.letters);
  const agreement = read.ok && read.value ? compareLetters(read.value, words) : null;
  if (!read.ok || !read.value || !agreement) return [];
  const { aLetter, whole, part, near, not } = EVIDENCE.letters;
  const { legible } = read.value;
  const weight = {
    whole: Math.min(whole, legible * aLetter),
    part: Math.min(part, (legible - 1) * aLetter),
    near,
    not: Math.max(not, (-legible * aLetter) / 2),
  }[agreement.degree];
  return [
    {
      aspect: "letters",
      recorded: words,
      ...agreement,
      stands: agreement.degree === "not" ? "against" : "for",
      weight,
    },
  ];
}

function standing(aspect: "size" | "technique" | "material" | "kind", agrees: boolean): Stand {
  const weights = EVIDENCE[aspect];
  return agrees ? { stands: "for", weight: weights.for } : { stands: "against", weight: weights.against };
}
