import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { expectedCalibrationError, reliability } from "#ml/evaluate/reliability";

const reference: {
  readonly reliability: {
    readonly probability: readonly number[];
    readonly right: readonly number[];
    readonly bins: readonly { readonly probability: number; readonly right: number }[];
    readonly ece: number;
  };
} = JSON.parse(
  readFileSync(join(import.meta.dirname, "..", "..", "fixtures", "calibration", "reference.json"), "utf8"),
);

const judged = (probabilities: readonly number[], right: readonly number[]) =>
  probabilities.map((probability, i) => ({ probability, right: right[i] === 1 }));

describe("the expected calibration error", () => {
  // torchmetrics 1.x, documentation of functional.classification.binary_calibration_error, norm="l1".
  it("is 0.29 in the worked example of torchmetrics", () => {
    expect(expectedCalibrationError(judged([0.25, 0.25, 0.55, 0.75, 0.75], [0, 0, 1, 1, 1]), 2)).toBeCloseTo(
      0.29,
      12,
    );
  });

  // torchmetrics 1.x, its own test test_binary_with_zero_pred.
  it("is 0.6 where one answer was given no chance at all, and was right", () => {
    expect(expectedCalibrationError(judged([1, 1, 1, 1, 0], [0, 0, 1, 1, 1]), 2)).toBeCloseTo(0.6, 12);
  });

  it("agrees with scikit-learn's calibration_curve, bin by bin, also on the edges of bins", () => {
    const { probability, right, bins, ece } = reference.reliability;
    const all = judged(probability, right);
    const filled = reliability(all).filter(({ count }) => count > 0);
    expect(filled).toHaveLength(bins.length);
    for (const [i, bin] of filled.entries()) {
      expect(bin.probability).toBeCloseTo(bins[i]?.probability ?? Number.NaN, 10);
      expect(bin.right).toBeCloseTo(bins[i]?.right ?? Number.NaN, 10);
    }
    expect(expectedCalibrationError(all)).toBeCloseTo(ece, 10);
  });

  it("is nought for certainty that is right, one for certainty that is wrong, and no number of nothing", () => {
    expect(expectedCalibrationError(judged([1, 0], [1, 0]))).toBe(0);
    expect(expectedCalibrationError(judged([1, 0], [0, 1]))).toBe(1);
    expect(expectedCalibrationError([])).toBeNaN();
  });

  it("refuses what is no probability", () => {
    expect(() => reliability([{ probability: 1.2, right: true }])).toThrow(
      "probability: must be a number from 0 to 1. Received 1.2.",
    );
  });
});
