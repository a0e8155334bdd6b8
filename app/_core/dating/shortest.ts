import { byYear, type Steps } from "./steps.ts";

/** Years, first and last counted in, and how much of the probability they hold; exact ends in fractional years. */
export type YearRange = {
  readonly from: number;
  readonly to: number;
  readonly mass: number;
  readonly begins: number;
  readonly ends: number;
};

/** The shortest span that holds a share: nearly always one range, several when the probability has several heaps. */
export type Shortest = { readonly ranges: readonly YearRange[]; readonly mass: number };

/** Densities that differ by less, relatively, count as the same. */
const SAME = 1e-9;

/**
 * The likeliest steps of the grid that together hold a share, joined to ranges. Among steps that are equally likely those
 * nearest the median are taken.
 * @param sorted the same probabilities from small to large
 */
export function shortestHolding(
  share: number,
  steps: Float64Array,
  sorted: Float64Array,
  median: number,
  { perYear, first }: Steps,
): Shortest {
  let held = 0;
  let i = sorted.length;
  while (i > 0 && held < share - SAME) {
    i--;
    held += sorted[i] ?? 0;
  }
  const least = sorted[i] ?? 0;
  const above = least * (1 + SAME);
  const below = least * (1 - SAME);
  const taken = new Uint8Array(steps.length);
  let mass = 0;
  for (let k = 0; k < steps.length; k++) {
    if ((steps[k] ?? 0) <= above) continue;
    taken[k] = 1;
    mass += steps[k] ?? 0;
  }
  // From the median outwards, the nearer first.
  const middle = Math.round(median);
  for (let step = 0; mass < share - SAME && step < 2 * steps.length + 2; step++) {
    const k = step % 2 === 0 ? middle + step / 2 : middle - (step + 1) / 2;
    const p = steps[k];
    if (p === undefined || p > above || p < below || taken[k] === 1) continue;
    taken[k] = 1;
    mass += p;
  }
  return joined(taken, byYear(steps, perYear), perYear, first / perYear);
}

function joined(taken: Uint8Array, years: Float64Array, perYear: number, firstYear: number): Shortest {
  const ranges: YearRange[] = [];
  for (let k = 0; k < taken.length; k++) {
    if (taken[k] === 0) continue;
    let end = k;
    while (taken[end + 1] === 1) end++;
    const before = ranges.at(-1);
    const from = firstYear + Math.floor(k / perYear);
    const joins = before !== undefined && before.to >= from - 1;
    if (joins) ranges.pop();
    const start = joins ? before.from : from;
    const to = firstYear + Math.floor(end / perYear);
    ranges.push({
      from: start,
      to,
      mass: years.subarray(start - firstYear, to + 1 - firstYear).reduce((sum, p) => sum + p, 0),
      begins: joins ? before.begins : firstYear + k / perYear,
      ends: firstYear + (end + 1) / perYear,
    });
    k = end;
  }
  return { ranges, mass: ranges.reduce((sum, { mass }) => sum + mass, 0) };
}

/** Where half of the probability lies on either side, in cells from the first. */
export function medianOf(cells: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < cells.length; k++) {
    const p = cells[k] ?? 0;
    if (sum + p >= 0.5) return k + (p > 0 ? (0.5 - sum) / p : 0);
    sum += p;
  }
  return cells.length;
}
