import type { Weighed } from "./chances.ts";
import { type Candidate, evidenceOf, isExact } from "./fuse.ts";

/** What is counted and measured of entries beside their likeness; an entry that is missing has none of it. */
type Counted = {
  /** How many photographs each entry has. */
  readonly photographs: ReadonlyMap<string, number>;
  /** Log-odds that a re-ranking network gives each pair. */
  readonly pairScores: ReadonlyMap<string, number>;
};

/** Candidates as probabilities are reckoned from them. */
export function weigh(
  candidates: readonly Candidate[],
  { photographs, pairScores }: Counted,
): readonly Weighed[] {
  return candidates.map(({ entry, ranked, findings }) => ({
    entry,
    similarity: ranked?.best.similarity ?? null,
    photographs: photographs.get(entry) ?? 1,
    pairScore: pairScores.get(entry) ?? null,
    evidence: evidenceOf(findings),
    lettersAgree: findings.some(isExact),
  }));
}
