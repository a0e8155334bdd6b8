import { describe, expect, it } from "vitest";
import type { Technique } from "#core/entries/vocabulary";
import { type Knowledge, NOTHING_KNOWN } from "#core/look-ups/knowledge";
import { compareMaterials, compareTechniques } from "#core/similarity/compare-making";
import { EVIDENCE } from "#core/similarity/evidence";
import { type EntryFacts, findingsOf } from "#core/similarity/findings";

const entry: EntryFacts = {
  words: "T·BODKIN",
  sizeMm: { width: 15, height: 16.2 },
  technique: "stamped",
  material: "pewter",
  kind: "mark",
};
const findings = (known: Partial<Knowledge>, recorded: Partial<EntryFacts> = {}) =>
  findingsOf({ ...NOTHING_KNOWN, ...known }, { ...entry, ...recorded });

describe("given an entry of a stamped pewter mark", () => {
  it("when nothing is known, then nothing is found for or against it", () => {
    expect(findings({})).toEqual([]);
  });

  it("when everything known is what it records, then everything agrees", () => {
    const known = {
      letters: "T BODKIN",
      widthMm: 15,
      heightMm: 16,
      technique: "stamped",
      material: "Pewter",
      kind: "mark",
    } as const;
    const found = findings(known);
    expect(found.map(({ aspect, stands }) => [aspect, stands])).toEqual([
      ["letters", "for"],
      ["size", "for"],
      ["technique", "for"],
      ["material", "for"],
      ["kind", "for"],
    ]);
    expect(found.every(({ weight }) => weight > 0)).toBe(true);
  });

  it("when the object is stoneware, then the material speaks against it and says which it records", () => {
    expect(findings({ material: "stoneware" })).toEqual([
      { aspect: "material", stands: "against", recorded: "pewter", weight: EVIDENCE.material.against },
    ]);
  });

  it("when it records no words, no size, no technique and no material, then only the kind is compared", () => {
    const known = {
      letters: "VOSS",
      widthMm: 80,
      technique: "cast",
      material: "clay",
      kind: "mark",
    } as const;
    const bare = { words: "", sizeMm: null, technique: null, material: "" };
    expect(findings(known, bare).map(({ aspect }) => aspect)).toEqual(["kind"]);
  });

  it("when more letters agree, then they weigh more, up to a limit; the whole wording more than a part", () => {
    const weight = (letters: string, words: string) =>
      findings({ letters }, { words })[0]?.weight ?? Number.NaN;
    expect(weight("TB", "T B")).toBe(2);
    expect(weight("T BODKIN", "T·BODKIN")).toBe(EVIDENCE.letters.whole);
    expect(weight("BODKIN", "T·BODKIN")).toBe(EVIDENCE.letters.part);
    expect(weight("B", "T·BODKIN")).toBe(0);
    expect(weight("T·BODKLN", "T·BODKIN")).toBe(EVIDENCE.letters.near);
    expect(weight("V", "T·BODKIN")).toBe(-0.5);
    expect(weight("VOSS", "T·BODKIN")).toBe(EVIDENCE.letters.not);
  });
});

describe("making", () => {
  it.each([
    ["stamped", "stamped", true],
    ["stamped", "printed", false],
    ["stamped", "impressed", null],
    ["etched", "incised", null],
    ["woven", "embroidered", null],
    ["other", "cast", null],
    [null, "cast", null],
    ["cast", null, null],
  ] as const)("technique %s beside %s: %s", (known, recorded, agrees) =>
    expect(compareTechniques(known as Technique | null, recorded)).toBe(agrees),
  );

  it.each([
    ["stoneware", "salt-glazed stoneware", true],
    ["Salt-glazed Stoneware", "stoneware", true],
    ["salt-glazed stoneware", "slip-glazed stoneware", null],
    ["silver", "silver plate", null],
    ["oak", "oak wood", null],
    ["pewter", "salt-glazed stoneware", false],
    ["", "pewter", null],
    ["pewter", "", null],
  ])("material “%s” beside “%s”: %s", (known, recorded, agrees) => {
    expect(compareMaterials(known, recorded)).toBe(agrees);
    expect(compareMaterials(recorded, known)).toBe(agrees);
  });
});
