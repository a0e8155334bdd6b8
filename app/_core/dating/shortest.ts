import { MONTHS } from "./day.ts";

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
 * The likeliest months that together hold a share, joined to ranges. Among months that are equally likely those
 * nearest the median are taken.
 * @param sorted the same probabilities from small to large
 */
export function shortestHolding(
  share: number,
  months: Float64Array,
  sorted: Float64Array,
  median: number,
  firstYear: number,
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
  const taken = new Uint8Array(months.length);
  let mass = 0;
  for (let k = 0; k < months.length; k++) {
    if ((months[k] ?? 0) <= above) continue;
    taken[k] = 1;
    mass += months[k] ?? 0;
  }
  // From the median outwards, the nearer first.
  const middle = Math.floor(median);
  for (let step = 0; mass < share - SAME && step < 2 * months.length + 2; step++) {
    const k = step % 2 === 0 ? middle + step / 2 : middle - (step + 1) / 2;
    const p = months[k];
    if (p === undefined || p > above || p < below || taken[k] === 1) continue;
    taken[k] = 1;
    mass += p;
  }
  return joined(taken, months, firstYear);
}

function joined(taken: Uint8Array, months: Float64Array, firstYear: number): Shortest {
  const ranges: YearRange[] = [];
  for (let k = 0; k < taken.length; k++) {
    if (taken[k] === 0) continue;
    let end = k;
    while (end + 1 < taken.length && taken[end + 1] === 1) end++;
    const [from, to] = [Math.floor(k / MONTHS), Math.floor(end / MONTHS)];
    const before = ranges.at(-1);
    const joins = before !== undefined && before.to >= firstYear + from - 1;
    if (joins) ranges.pop();
    const start = joins ? before.from - firstYear : from;
    ranges.push({
      from: firstYear + start,
      to: firstYear + to,
      mass: massOf(months, start, to),
      begins: joins ? before.begins : firstYear + k / MONTHS,
      ends: firstYear + (end + 1) / MONTHS,
    });
    k = end;
  }
  return { ranges, mass: ranges.reduce((sum, { mass }) => sum + mass, 0) };
}

function massOf(months: Float64Array, fromYear: number, toYear: number): number {
  let mass = 0;
  for (let k = MONTHS * fromYear; k < MONTHS * (toYear + 1); k++) mass += months[k] ?? 0;
  return mass;
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
