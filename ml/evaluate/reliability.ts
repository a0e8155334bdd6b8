import { mean } from "./metrics.ts";

/** A statement that was given a probability, and whether it was so. */
export type Judged = { readonly probability: number; readonly right: boolean };

/** The statements whose probability fell into one bin; the means of an empty one are null. */
export type Bin = {
  readonly count: number;
  readonly probability: number | null;
  readonly right: number | null;
};

/** As many as are usual; the project's figures are in 15. */
const BINS = 15;

/**
 * The reliability table: statements in bins of equal width, ((m - 1) / bins, m / bins], the first holding 0 too.
 * Definition: Guo, Pleiss, Sun and Weinberger, On Calibration of Modern Neural Networks, ICML 2017, section 2.
 * @throws Error when a probability is not from 0 to 1
 */
export function reliability(judged: readonly Judged[], bins = BINS): readonly Bin[] {
  const within: Judged[][] = Array.from({ length: bins }, () => []);
  for (const each of judged) {
    if (!(each.probability >= 0 && each.probability <= 1))
      throw new Error(`probability: must be a number from 0 to 1. Received ${each.probability}.`);
    within[Math.max(0, Math.ceil(each.probability * bins) - 1)]?.push(each);
  }
  return within.map((these) => ({
    count: these.length,
    probability: these.length === 0 ? null : mean(these.map(({ probability }) => probability)),
    right: these.length === 0 ? null : mean(these.map(({ right }) => (right ? 1 : 0))),
  }));
}

/**
 * Expected calibration error: how far the share of what was right lies from the mean probability, averaged over the
 * bins by how many statements each holds. Definition as above, equation 3.
 * @returns 0 to 1; NaN of nothing
 */
export function expectedCalibrationError(judged: readonly Judged[], bins = BINS): number {
  const gaps = reliability(judged, bins).map(
    ({ count, probability, right }) => count * Math.abs((probability ?? 0) - (right ?? 0)),
  );
  return gaps.reduce((sum, gap) => sum + gap, 0) / judged.length;
}
