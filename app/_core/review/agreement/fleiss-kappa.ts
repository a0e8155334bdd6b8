/**
 * Fleiss' kappa: how much further than by chance raters agree, where every subject has the same number of ratings,
 * by whichever raters (J. L. Fleiss, "Measuring nominal scale agreement among many raters", Psychological Bulletin 76,
 * 1971, 378-382). 1 is full agreement, 0 what chance would bring, less is disagreement.
 *
 * Its usual caveats: where almost all ratings are alike it is low however much raters agree; a few subjects make it
 * waver; kappas of different categories or numbers of ratings do not compare.
 * @param counts one row a subject: how many ratings fell into each category
 * @returns null where it is not defined: no subjects, fewer than two ratings of each, unequal numbers of them, or all in
 *   one category
 */
export function fleissKappa(counts: readonly (readonly number[])[]): number | null {
  const raters = sum(counts[0] ?? []);
  if (raters < 2 || counts.some((row) => sum(row) !== raters)) return null;
  const ratings = counts.length * raters;
  const pairs = raters * (raters - 1);
  const observed = sum(counts.map((row) => sum(row.map((n) => n * (n - 1))) / pairs)) / counts.length;
  const categories = Math.max(...counts.map((row) => row.length));
  const shares = Array.from(
    { length: categories },
    (_, i) => sum(counts.map((row) => row[i] ?? 0)) / ratings,
  );
  const expected = sum(shares.map((share) => share ** 2));
  return expected === 1 ? null : (observed - expected) / (1 - expected);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);
