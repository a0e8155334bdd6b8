/**
 * The measures of a ranked answer. Definitions: Manning, Raghavan and Schütze, Introduction to Information
 * Retrieval, Cambridge 2008, chapter 8 (recall, precision, mean average precision); Hanley and McNeil,
 * Radiology 143, 1982, pages 29-36 (the area under the ROC curve as the Mann-Whitney statistic).
 */

/**
 * The share of queries whose right class is among the first k.
 * @param ranks for each query, the rank of its right class, from 1
 * @returns 0 to 1; NaN without queries
 */
export function recallAt(k: number, ranks: readonly number[]): number {
  return mean(ranks.map((rank) => (rank <= k ? 1 : 0)));
}

/**
 * Precision at each relevant answer, averaged over all relevant ones, found or not.
 * @param relevant for each answer, best first, whether it is relevant
 * @param total how many relevant ones there are
 */
export function averagePrecision(relevant: readonly boolean[], total: number): number {
  let found = 0;
  let sum = 0;
  for (const [i, yes] of relevant.entries()) if (yes) sum += ++found / (i + 1);
  return sum / total;
}

/**
 * The chance that a present mark's best similarity is above an absent mark's, a tie counting half.
 * @returns 0 to 1; NaN when either list is empty
 */
export function areaUnderRoc(present: readonly number[], absent: readonly number[]): number {
  let wins = 0;
  for (const p of present) for (const a of absent) wins += p > a ? 1 : p === a ? 0.5 : 0;
  return wins / (present.length * absent.length);
}

/** The middle value, or the mean of the two in the middle; NaN of nothing. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? Number.NaN;
  return (upper + lower) / 2;
}

/** The arithmetic mean; NaN of nothing. */
export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
