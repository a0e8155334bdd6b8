import { type HardBounds, hardBounds } from "./bounds.ts";
import { findConflicts } from "./conflicts.ts";
import type { Evidence } from "./evidence.ts";
import { bitsBetween, type Without, withoutPiece } from "./leave-out.ts";
import { byGroup, mixTogether, type Weighed, weighPiece } from "./mix.ts";
import { DATING_POLICY, type DatingPolicy, type Prior, spreadPrior } from "./prior.ts";
import { cellsOf, type Shortest, shortestHolding } from "./shortest.ts";
import { byYear, type Grid } from "./steps.ts";
import { type Narrowing, wouldNarrow } from "./would-narrow.ts";

export type Estimate = HardBounds & {
  readonly prior: Prior;
  /** The years computed with, both counted in. */
  readonly grid: Grid;
  /** How likely each year of the grid is; sums to 1. */
  readonly posterior: readonly number[];
  /** In fractional years; null where it falls between heaps, outside the ranges that hold 80 in 100: no date then. */
  readonly median: number | null;
  readonly shortest: { readonly 50: Shortest; readonly 80: Shortest; readonly 95: Shortest };
  /** Every smallest set of pieces that cannot all be true; where there is one there are no hard bounds. */
  readonly conflicts: readonly (readonly string[])[];
  /** The hard bounds by those pieces that nothing contradicts. */
  readonly undisputed: HardBounds;
  /** Pieces that fit no year of the grid, and so say nothing. */
  readonly outside: readonly string[];
  /** What the estimate would be without each piece. */
  readonly without: Readonly<Record<string, Without>>;
  /** How much each piece tells, in bits: what is known with it against what is known without it. */
  readonly weights: Readonly<Record<string, number>>;
  /** What further evidence would tell most, the most first. */
  readonly wouldNarrow: readonly Narrowing[];
};

/**
 * When an object was made, by what was seen on it and what was told of it. The order of the evidence does not matter;
 * ids must differ.
 */
export function estimate(
  evidence: readonly Evidence[],
  prior: Prior,
  policy: DatingPolicy = DATING_POLICY,
): Estimate {
  const { grid, steps, before } = spreadPrior(evidence, prior, policy);
  const weighed = evidence
    .filter(({ reliability }) => reliability > 0)
    .map((piece) => weighPiece(piece, steps));
  const groups = byGroup(weighed).map((pieces) => ({ pieces, mixed: mixTogether(pieces, before) }));
  const after = posteriorOf(
    before,
    groups.map(({ mixed }) => mixed),
  );
  const years = byYear(after, steps.perYear);
  const [yearCells, stepCells] = [cellsOf(years), cellsOf(after)];
  const cut = { perYear: steps.perYear, firstYear: grid.from };
  const holding = (share: number) => shortestHolding(share, yearCells, stepCells, cut);
  const shortest = { 50: holding(0.5), 80: holding(0.8), 95: holding(0.95) };
  const inYears = stepCells.median / steps.perYear;

  const without: Record<string, Without> = {};
  const weights: Record<string, number> = {};
  for (const { pieces, mixed } of groups) {
    for (const { piece } of pieces) {
      const rest = pieces.filter((other) => other.piece !== piece);
      const less = withOther(after, mixed, rest.length > 0 ? mixTogether(rest, before) : null, steps.perYear);
      without[piece.id] = withoutPiece(less, grid.from, inYears);
      weights[piece.id] = bitsBetween(years, less);
    }
  }
  const conflicts = findConflicts(evidence);
  const disputed = new Set(conflicts.flat());
  return {
    prior,
    grid,
    posterior: Array.from(years),
    median: inRanges(grid.from + inYears, shortest[80]),
    shortest,
    ...hardBounds(evidence),
    conflicts,
    undisputed: hardBounds(evidence.filter(({ id }) => !disputed.has(id))),
    outside: outsideOf(weighed),
    without,
    weights,
    wouldNarrow: wouldNarrow(years, evidence),
  };
}

/** The prior times what every group says, at each step. */
function posteriorOf(prior: Float64Array, said: readonly Float64Array[]): Float64Array {
  const product = prior.slice();
  for (const mixed of said) {
    let sum = 0;
    for (let k = 0; k < product.length; k++) {
      const p = (product[k] ?? 0) * (mixed[k] ?? 0);
      product[k] = p;
      sum += p;
    }
    for (let k = 0; k < product.length; k++) product[k] = (product[k] ?? 0) / sum;
  }
  return product;
}

/** The posterior by years with another saying in the place of one; null says nothing. */
function withOther(
  posterior: Float64Array,
  said: Float64Array,
  other: Float64Array | null,
  perYear: number,
): Float64Array {
  const steps = new Float64Array(posterior.length);
  for (let k = 0; k < steps.length; k++) steps[k] = (posterior[k] ?? 0) / (said[k] ?? 1);
  if (other) for (let k = 0; k < steps.length; k++) steps[k] = (steps[k] ?? 0) * (other[k] ?? 1);
  const years = byYear(steps, perYear);
  let sum = 0;
  for (let y = 0; y < years.length; y++) sum += years[y] ?? 0;
  for (let y = 0; y < years.length; y++) years[y] = (years[y] ?? 0) / sum;
  return years;
}

function inRanges(year: number, { ranges }: Shortest): number | null {
  return ranges.some(({ from, to }) => from <= year && year < to + 1) ? year : null;
}

function outsideOf(weighed: readonly Weighed[]): readonly string[] {
  return weighed
    .filter(({ ifTrue }) => !ifTrue.some((likely) => likely > 0))
    .map(({ piece }) => piece.id)
    .sort();
}
