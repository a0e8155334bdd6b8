import { medianOf } from "./shortest.ts";

/** The estimate without one piece. */
export type Without = {
  readonly median: number;
  /** Years, first and last counted in, from the first to the last of the shortest span that holds 95 in 100. */
  readonly interval95: { readonly from: number; readonly to: number };
  /** By how many years the median moves when the piece is left out; above zero is later. */
  readonly shift: number;
};

/**
 * @param years how likely each year is without the piece
 * @param median with it, in years from the first
 */
export function withoutPiece(years: Float64Array, firstYear: number, median: number): Without {
  const own = medianOf(years);
  return { median: firstYear + own, interval95: hull95(years, firstYear), shift: own - median };
}

/** How often the likelihood is halved between what is never and what is certain, to find the least one taken. */
const HALVINGS = 22;
const NEVER = 1e-7;

/** From the first to the last of the likeliest years that hold 95 in 100 together: sought, since sorting takes longer. */
function hull95(years: Float64Array, firstYear: number): { readonly from: number; readonly to: number } {
  let [lower, upper] = [Math.log(NEVER), 0];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (lower + upper) / 2;
    const least = Math.exp(middle);
    let held = 0;
    for (let y = 0; y < years.length; y++) {
      const p = years[y] ?? 0;
      if (p >= least) held += p;
    }
    if (held >= 0.95) lower = middle;
    else upper = middle;
  }
  const least = Math.exp(lower);
  let first = 0;
  while ((years[first] ?? 1) < least) first++;
  let last = years.length - 1;
  while ((years[last] ?? 1) < least) last--;
  return { from: firstYear + first, to: firstYear + last };
}

/** The Kullback-Leibler divergence of what is known from what would be, in bits. */
export function bitsBetween(known: Float64Array, otherwise: Float64Array): number {
  let bits = 0;
  for (let y = 0; y < known.length; y++) {
    const p = known[y] ?? 0;
    const q = otherwise[y] ?? 0;
    if (p > 1e-12 && q > 0) bits += p * Math.log2(p / q);
  }
  return Math.max(0, bits);
}
