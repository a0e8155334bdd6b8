import { describe, expect, it } from "vitest";
import { contentOf, statedContent } from "#core/entries/content-of";
import { differenceOf, listDifference } from "#core/entries/difference";
import { whatItHas } from "#core/entries/what-it-has";
import { fingerprint } from "#core/photographs/fingerprint";
import type { Photograph } from "#core/photographs/photograph";

const content = contentOf({
  title: "Anvil",
  kind: "mark",
  maker: null,
  makerPart: null,
  words: "T B",
  emblem: "anvil",
  frame: "",
  technique: "stamped",
  material: "pewter",
  placeOnObject: "",
  colours: ["black"],
  sizeMm: { width: 13, height: 12 },
  period: "1779/1790",
  periodFromReason: "",
  periodToReason: "",
  description: "An anvil.",
  distinguish: "",
  reproductions: "",
  relations: [],
  sources: [],
});
const photograph = (sha256: string, more: Partial<Photograph> = {}): Photograph => ({
  id: `id ${sha256}`,
  sha256,
  width: 10,
  height: 10,
  region: { x: 0, y: 0, width: 10, height: 10, turn: 0 },
  pixelsPerMm: null,
  shows: "",
  licence: "CC0-1.0",
  credit: "Nobody",
  impression: null,
  ...more,
});
const [a, b, c] = ["a", "b", "c"].map((sha256) => photograph(sha256)) as [Photograph, Photograph, Photograph];

describe("the difference of two revisions", () => {
  it("is nothing between equals, however their parts are ordered", () => {
    const size = { height: 12, width: 13 };
    expect(
      differenceOf(
        { content, photographs: [a] },
        { content: { ...content, sizeMm: size }, photographs: [a] },
      ),
    ).toEqual([]);
  });

  it("names each field that differs, and how it is to be shown", () => {
    const after = {
      ...content,
      title: "Anvil, crowned",
      period: "1779/1791",
      colours: [],
      field: "metalwork" as const,
    };
    expect(differenceOf({ content, photographs: [] }, { content: after, photographs: [] })).toEqual([
      { field: "title", how: "text" },
      { field: "field", how: "value" },
      { field: "colours", how: "list" },
      { field: "period", how: "period" },
    ]);
  });

  it("says which photographs came, went and are said to show something else", () => {
    const worn = photograph("b", { shows: "Worn" });
    expect(differenceOf({ content, photographs: [a, b] }, { content, photographs: [worn, c] })).toEqual([
      {
        field: "photographs",
        how: "photographs",
        reordered: false,
        changes: [
          { is: "removed", before: a },
          { is: "changed", before: b, after: worn },
          { is: "added", after: c },
        ],
      },
    ]);
    expect(differenceOf({ content, photographs: [a, b] }, { content, photographs: [b, a] })).toMatchObject([
      { reordered: true, changes: [] },
    ]);
  });

  it("parts two lists", () => {
    expect(listDifference(["x", "y"], ["y", "z"])).toEqual({ removed: ["x"], added: ["z"], kept: ["y"] });
  });
});

describe("what older revisions had no place for", () => {
  it("is left out of what is hashed when it says nothing", () => {
    const { field: _, citations: __, ...old } = content;
    expect(statedContent(content)).toEqual(old);
    expect(Object.keys(statedContent({ ...content, field: "toys" }))).toContain("field");
  });

  it("leaves the fingerprint of a photograph as it was", () => {
    const before = '["anvil","a",0,0,10,10,0,null,"","CC0-1.0","Nobody"]';
    expect(fingerprint({ ...a, entry: "anvil" })).toBe(before);
    expect(fingerprint({ ...a, impression: 2, entry: "anvil" })).toBe(before.replace("]", ",2]"));
  });
});

it("counts what a review asks for: photographs without a number show one impression together", () => {
  const shown = [a, b, photograph("c", { impression: 1 }), photograph("d", { impression: 2, credit: "" })];
  expect(whatItHas(content, shown)).toEqual({
    title: true,
    description: true,
    photographs: 4,
    uncredited: 1,
    impressions: 3,
    citations: 0,
  });
});
