import { describe, expect, it } from "vitest";
import { anomaliesOf } from "#core/object-files/anomalies";
import { estimateOf, evidenceOf } from "#core/object-files/evidence";
import { checkProvenance } from "#core/object-files/provenance";
import { sizesOf } from "#core/object-files/sizes";
import { fileOf, id, THIS_YEAR, type Typed } from "./story.ts";

const bear: readonly Typed[] = [
  ["describe", { title: "Seated bear of the line Brumm", family: "soft toys" }],
  [
    "line",
    { name: "Brumm", sizes: "17, 22, 28", unit: "cm", when: "1914/1927", source: "An invented catalogue" },
  ],
  ["measurement", { id: id(1), measured: "height-standing", amount: "16", unit: "cm" }],
  ["measurement", { id: id(2), measured: "length", amount: "22", unit: "cm" }],
  ["document", { id: id(3), kind: "letter", title: "Letter of the owner's daughter", when: "1968-05" }],
];
const remembered = (when: string): Typed => [
  "event",
  { id: id(4), kind: "given", to: "Hester Vane", when, documents: id(3), told: `Given at ${when}` },
];

describe("a line of 1914 to 1927 in 17, 22 and 28 cm; 16 cm high, 22 cm long; a gift remembered", () => {
  const file = fileOf("soft toys", ...bear, remembered("[1921-03-27,1922-08]"));
  const estimate = estimateOf(file, [], THIS_YEAR);

  it("was not made before 1914, nor after August 1922 if the letter is right", () => {
    expect([estimate.notBefore?.day, estimate.notAfter?.day]).toEqual(["1914-01-01", "1922-08-31"]);
    expect(estimate.notBefore?.evidenceIds).toEqual(["line:line"]);
    expect(estimate.notAfter?.evidenceIds).toEqual([`events:${id(4)}`]);
  });

  it("is consistent with the line", () => {
    expect(estimate.conflicts).toEqual([]);
    expect(anomaliesOf(file, [])).toEqual([]);
    const checked = checkProvenance(file, evidenceOf(file, []), estimate);
    expect(checked.contradictions).toEqual([]);
  });

  it("has an ambiguous size: the smallest by height, the middle one by length", () => {
    const sizes = sizesOf(file);
    expect(sizes?.verdict).toBe("conventions-disagree");
    expect(sizes?.under.map(({ convention, best }) => [convention, best?.name])).toEqual([
      ["height-standing", "17 cm"],
      ["length", "22 cm"],
    ]);
    expect(sizes?.toSettle.map(({ step }) => step)).toEqual(["find-convention", "measure-known-example"]);
  });

  it("asks about a letter written 46 years after what it tells", () => {
    const { questions } = checkProvenance(file, evidenceOf(file, []), estimate);
    expect(questions.map(({ is, params }) => [is, params.years])).toEqual([["told-later", 46]]);
  });

  it.each([
    ["Easter 1921", "1921-03-27"],
    ["August 1922", "1922-08-31"],
  ])("is not after %s if that alone was told", (when, notAfter) => {
    const told = estimateOf(fileOf("soft toys", ...bear, remembered(when)), [], THIS_YEAR);
    expect([told.notBefore?.day, told.notAfter?.day]).toEqual(["1914-01-01", notAfter]);
  });

  it("contradicts the line if the gift was at Easter 1912", () => {
    const early = fileOf("soft toys", ...bear, remembered("Easter 1912"));
    const said = anomaliesOf(early, []);
    expect(said.map(({ is, params }) => [is, params.against])).toEqual([["story-against-date", "Brumm"]]);
    const { contradictions } = checkProvenance(
      early,
      evidenceOf(early, []),
      estimateOf(early, [], THIS_YEAR),
    );
    expect(contradictions.map(({ is, params }) => [is, params.who, params.notBefore])).toEqual([
      ["before-it-was-made", "Hester Vane", "1914-01-01"],
    ]);
  });
});
