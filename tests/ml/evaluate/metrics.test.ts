import { describe, expect, it } from "vitest";
import { areaUnderRoc, averagePrecision, mean, median, recallAt } from "#ml/evaluate/metrics";

describe("average precision", () => {
  // Manning, Raghavan and Schütze, Introduction to Information Retrieval, 2008, exercise 8.8: four relevant
  // documents, two systems. (1/1 + 2/3 + 3/9 + 4/10) / 4 = 0.6 and (1/2 + 2/5 + 3/6 + 4/7) / 4 = 0.4929.
  const judged = (letters: string) => letters.split(" ").map((letter) => letter === "R");

  it("is 0.6 for the exercise's first system", () => {
    expect(averagePrecision(judged("R N R N N N N N R R"), 4)).toBeCloseTo(0.6, 10);
  });

  it("is 0.493 for its second", () => {
    expect(averagePrecision(judged("N R N N R R R N N N"), 4)).toBeCloseTo(0.4928571, 6);
  });

  it("is one over the rank when one answer is relevant", () => {
    expect(averagePrecision(judged("N N N R"), 1)).toBe(1 / 4);
  });

  it("counts a relevant answer that was not found as 0", () => {
    expect(averagePrecision(judged("R N"), 2)).toBe(1 / 2);
  });
});

describe("recall", () => {
  it("is the share of right classes among the first k", () => {
    const ranks = [1, 2, 5, 6, 40];
    expect([1, 5, 10].map((k) => recallAt(k, ranks))).toEqual([1 / 5, 3 / 5, 4 / 5]);
  });

  it("of no query is no number", () => expect(recallAt(1, [])).toBeNaN());
});

describe("the area under the ROC curve", () => {
  // Hanley and McNeil, Radiology 143, 1982, table I: 58 normal and 51 abnormal tomograms rated from 1 to 5;
  // the paper gives the area as 0.893.
  it("is 0.893 for the tomograms of Hanley and McNeil, which have many ties", () => {
    const rated = (counts: number[]) => counts.flatMap((count, i) => Array<number>(count).fill(i + 1));
    const normal = rated([33, 6, 6, 11, 2]);
    const abnormal = rated([3, 2, 2, 11, 33]);
    expect([normal.length, abnormal.length]).toEqual([58, 51]);
    expect(areaUnderRoc(abnormal, normal)).toBeCloseTo(0.893, 3);
  });

  it("is 1 when every present mark is above every absent one, 0 the other way, a half for a tie", () => {
    expect(areaUnderRoc([0.8, 0.9], [0.1, 0.7])).toBe(1);
    expect(areaUnderRoc([0.1], [0.7, 0.9])).toBe(0);
    expect(areaUnderRoc([0.5], [0.5])).toBe(0.5);
  });

  it("of nothing is no number", () => expect(areaUnderRoc([], [1])).toBeNaN());
});

describe("the middle", () => {
  it("is the middle value, or the mean of the two in the middle", () => {
    expect(median([9, 1, 5])).toBe(5);
    expect(median([9, 1, 5, 7])).toBe(6);
    expect(mean([1, 2, 6])).toBe(3);
    expect(median([])).toBeNaN();
  });
});
