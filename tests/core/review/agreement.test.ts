import { describe, expect, it } from "vitest";
import { fleissKappa } from "#core/review/agreement/fleiss-kappa";
import { krippendorffAlpha } from "#core/review/agreement/krippendorff-alpha";

/**
 * Table 1 of Fleiss (1971): 30 patients, six diagnoses of each, in five categories. Taken from data_raw/fleiss1971.csv of
 * github.com/JonasMoss/quadagree at 62042a8, "scraped by hand from Fleiss (1971)"; R's irr has it as `diagnoses`, and
 * gives 0.430 for it, and 0.245, 0.245, 0.520, 0.471, 0.566 for the categories one by one.
 */
const FLEISS_1971 = [
  ...["00060", "03003", "01401", "00006", "03030", "20400", "00402", "20310", "20040", "00006"],
  ...["10050", "11040", "03300", "10050", "02031", "00501", "30012", "51000", "02040", "10203"],
  ...["00006", "01050", "02013", "20040", "10041", "05010", "40002", "02040", "10500", "00006"],
].map((row) => [...row].map(Number));

/** The worked example in Wikipedia's "Fleiss' kappa": ten subjects, 14 ratings of each; dnafinder/Fleiss on GitHub has it too. */
const TEN_SUBJECTS = [
  [0, 0, 0, 0, 14],
  [0, 2, 6, 4, 2],
  [0, 0, 3, 5, 6],
  [0, 3, 9, 2, 0],
  [2, 2, 8, 1, 1],
  [7, 7, 0, 0, 0],
  [3, 2, 6, 3, 0],
  [2, 5, 3, 2, 2],
  [6, 5, 2, 1, 0],
  [0, 2, 2, 3, 7],
];

describe("Fleiss' kappa", () => {
  it("is 0.430 for the table of Fleiss (1971), each of whose rows has six diagnoses", () => {
    expect(FLEISS_1971).toHaveLength(30);
    expect(FLEISS_1971.filter((row) => row.reduce((a, b) => a + b) !== 6)).toEqual([]);
    expect(fleissKappa(FLEISS_1971)).toBeCloseTo(0.43, 3);
  });

  it.each([0.245, 0.245, 0.52, 0.471, 0.566])("is %f for one category of it against the rest", (kappa) => {
    const found = [0, 1, 2, 3, 4].map((i) =>
      fleissKappa(FLEISS_1971.map((row) => [row[i] ?? 0, 6 - (row[i] ?? 0)])),
    );
    expect(found.map((each) => each?.toFixed(3))).toContain(kappa.toFixed(3));
  });

  it("is 0.210 for the ten subjects with 14 ratings each", () => {
    expect(fleissKappa(TEN_SUBJECTS)).toBeCloseTo(0.21, 3);
  });

  it.each([
    ["no subjects", []],
    ["one rating of each", [[1, 0]]],
    [
      "unequal numbers",
      [
        [2, 0],
        [1, 2],
      ],
    ],
    [
      "all in one category",
      [
        [3, 0],
        [3, 0],
      ],
    ],
  ])("is not defined for %s", (_, counts) => {
    expect(fleissKappa(counts)).toBeNull();
  });

  it("is 1 where all agree on different things", () => {
    expect(
      fleissKappa([
        [3, 0],
        [0, 3],
      ]),
    ).toBe(1);
  });
});

/**
 * Krippendorff (2011), section C: four observers, twelve units, one with a single value. The same numbers are the
 * example of `kripp.alpha` in R's irr, the "C" data.
 */
const KRIPPENDORFF_2011 = [
  "1 2 3 3 2 1 4 1 2 . . .",
  "1 2 3 3 2 2 4 1 2 5 . 3",
  ". 3 3 3 2 3 4 2 2 5 1 .",
  "1 2 3 3 2 4 4 1 2 5 1 .",
].map((row) => row.split(" ").map((value) => (value === "." ? null : value)));
const UNITS = Array.from({ length: 12 }, (_, unit) => KRIPPENDORFF_2011.map((row) => row[unit] ?? null));

describe("Krippendorff's alpha", () => {
  it("is 0.743 for the example with missing data of Krippendorff (2011)", () => {
    expect(krippendorffAlpha(UNITS)).toBeCloseTo(0.743, 3);
  });

  it("does not look at a unit with one value", () => {
    expect(krippendorffAlpha(UNITS.slice(0, 11))).toBe(krippendorffAlpha(UNITS));
  });

  it.each([
    ["nothing", []],
    ["units with one value", [["a"], ["b", null]]],
    [
      "values all alike",
      [
        ["a", "a"],
        ["a", "a"],
      ],
    ],
  ])("is not defined for %s", (_, units) => {
    expect(krippendorffAlpha(units)).toBeNull();
  });

  it("comes near Fleiss' kappa where nothing is missing and ratings are many", () => {
    const units = FLEISS_1971.map((row) => row.flatMap((n, i) => Array.from({ length: n }, () => String(i))));
    // Of n ratings, alpha = 1 - (1 - kappa) (n - 1) / n.
    expect(krippendorffAlpha(units)).toBeCloseTo(1 - ((1 - (fleissKappa(FLEISS_1971) ?? 0)) * 179) / 180, 12);
  });
});
