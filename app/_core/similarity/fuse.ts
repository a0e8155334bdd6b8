import { EVIDENCE } from "./evidence.ts";
import type { Finding } from "./findings.ts";
import type { LikenessThresholds } from "./likeness.ts";
import type { Ranked } from "./rank.ts";

/** What brought an entry into the answer: its likeness, or its letters, without which it would not be listed. */
export type FoundBy = "photograph" | "letters";

/** An entry that may be the answer. `ranked` is null when it has no photograph to compare with. */
export type Candidate = {
  readonly entry: string;
  readonly ranked: Ranked | null;
  readonly foundBy: FoundBy;
  readonly findings: readonly Finding[];
};

export type Fused = Candidate & {
  /** Natural log-odds that it is the mark: the photograph's, and what is known besides. Orders. */
  readonly score: number;
};

/** Entries of an answer that are shown without unfolding. */
export const LAID_OPEN = 8;

/**
 * Orders candidates by likeness and by what is known besides, best first; ties are broken by likeness and then by
 * entry.
 *
 * Half of the places laid open are kept for the strongest photographs (likeness "close" and better) and half for
 * exact readings, so that neither hides the other, whatever else is said. With nothing known the order is that of the
 * photographs alone.
 * @param odds by entry, calibrated log-odds; without them, the likeness's own
 * @returns at most `limit`
 */
export function fuse(
  candidates: readonly Candidate[],
  at: LikenessThresholds,
  limit: number,
  odds: ReadonlyMap<string, number> | null = null,
): readonly Fused[] {
  const scored = candidates
    .map(
      (candidate): Fused => ({ ...candidate, score: odds?.get(candidate.entry) ?? scoreOf(candidate, at) }),
    )
    .sort(byScore);
  const strong = scored
    .filter((each) => similarityOf(each) >= at.close)
    .sort((a, b) => byLikeness(a, b) || byScore(a, b));
  const exact = scored.filter((each) => each.findings.some(isExact));
  const kept = new Set([...strong.slice(0, LAID_OPEN / 2), ...exact.slice(0, LAID_OPEN / 2)]);
  const others = scored.filter((each) => !kept.has(each));
  const open = new Set([...kept, ...others.slice(0, Math.max(0, LAID_OPEN - kept.size))]);
  return [...scored.filter((each) => open.has(each)), ...scored.filter((each) => !open.has(each))].slice(
    0,
    limit,
  );
}

/**
 * Is "none of these fits" the likelier answer? Exact letters can speak for an entry whose photographs are unlike; what
 * speaks against one does not make it unlike.
 */
export function noneOfFused(fused: readonly Fused[], at: LikenessThresholds): boolean {
  return !fused.some((each) => {
    const letters = each.findings.find(isExact);
    return photographOdds(each, at) + (letters?.weight ?? 0) >= 0;
  });
}

/** Is there more than a little likeness, or do the letters agree? What lies farther away answers nothing. */
export function comesNear(candidate: Candidate, at: LikenessThresholds): boolean {
  return similarityOf(candidate) >= at.some || candidate.findings.some(isExact);
}

const scoreOf = (candidate: Candidate, at: LikenessThresholds): number =>
  photographOdds(candidate, at) + evidenceOf(candidate.findings);

/** Log-odds of what is known besides the photograph; what speaks against an entry is limited. */
export function evidenceOf(findings: readonly Finding[]): number {
  const sum = (stands: Finding["stands"]) =>
    findings.reduce((total, each) => total + (each.stands === stands ? each.weight : 0), 0);
  return sum("for") + Math.max(EVIDENCE.mostAgainst, sum("against"));
}

/**
 * Log-odds that the best photograph shows the same mark: the straight line through the model's own thresholds, 0.5
 * at `noneBelow` and 0.75 at `close`, not below `leastOfPhotograph`. An entry without a photograph stands where
 * likeness begins, at `some`.
 */
function photographOdds(candidate: Candidate, at: LikenessThresholds): number {
  const similarity = candidate.ranked?.best.similarity ?? at.some;
  const odds = (Math.log(3) * (similarity - at.noneBelow)) / (at.close - at.noneBelow);
  return Math.max(EVIDENCE.leastOfPhotograph, odds);
}

const similarityOf = (each: Candidate): number => each.ranked?.best.similarity ?? Number.NEGATIVE_INFINITY;
const byScore = (a: Fused, b: Fused): number =>
  b.score - a.score || byLikeness(a, b) || (a.entry < b.entry ? -1 : 1);
// Compared, not subtracted: without photographs both are infinitely far, and their difference is no number.
const byLikeness = (a: Fused, b: Fused): number =>
  similarityOf(a) === similarityOf(b) ? 0 : similarityOf(a) > similarityOf(b) ? -1 : 1;

/** Letters that agree without a slip, and enough of them to mean something. */
export function isExact(finding: Finding): boolean {
  return (
    finding.aspect === "letters" &&
    (finding.degree === "whole" || finding.degree === "part") &&
    finding.weight > 1
  );
}
