import { describe, expect, it } from "vitest";
import { entryFromColumns } from "#core/import/entry-from-columns";
import { makerFromColumns } from "#core/import/maker-from-columns";
import { photographFromColumns } from "#core/import/photograph-from-columns";

const entry = { key: "anchor-in-shield", title: "Anchor in a shield", kind: "mark" };
const photograph = { file: "a.webp", entry: "anchor-in-shield", licence: "CC BY 4.0", credit: "Somebody" };

describe("the columns of an entry", () => {
  it("become its content", () => {
    const read = entryFromColumns({
      ...entry,
      maker: "harl-and-son",
      technique: "stamped",
      colours: "black; red",
      size_mm: "12 x 8.5",
      period: "1871/1890~",
      variant_of: "anchor; anchor-crowned",
    });
    expect(read).toMatchObject({
      ok: true,
      value: {
        slug: "anchor-in-shield",
        content: {
          maker: "harl-and-son",
          makerPart: "made",
          technique: "stamped",
          colours: ["black", "red"],
          sizeMm: { width: 12, height: 8.5 },
          period: "1871/1890~",
          relations: [
            { kind: "variant of", entry: "anchor" },
            { kind: "variant of", entry: "anchor-crowned" },
          ],
        },
      },
    });
  });

  it("are all judged, and each error names column, rule and value", () => {
    const read = entryFromColumns({
      ...entry,
      key: "Anchor!",
      title: "",
      technique: "drawn",
      period: "c1890",
      size_mm: "12",
    });
    expect(read.ok ? [] : read.error).toEqual([
      { field: "key", rule: "slug", received: "Anchor!" },
      { field: "size_mm", rule: "numbers", received: "12", params: { count: 2 } },
      { field: "title", rule: "required", received: "" },
      { field: "technique", rule: "one-of", received: "drawn", params: expect.anything() },
      { field: "period", rule: "edtf", received: "c1890" },
    ]);
  });

  it("may not have one that means nothing here", () => {
    expect(entryFromColumns({ ...entry, weight: "3 kg" })).toMatchObject({
      error: [{ field: "weight", rule: "column-unknown" }],
    });
  });
});

describe("a size", () => {
  it("is above nothing on both sides", () => {
    expect(entryFromColumns({ ...entry, size_mm: "12 x -3" })).toMatchObject({
      error: [{ field: "size_mm", rule: "number-above", received: "-3" }],
    });
  });
});

describe("the columns of a maker", () => {
  it("carry names over time and who followed whom", () => {
    const read = makerFromColumns({
      key: "harl-and-son",
      name: "Harl & Son",
      active: "1781/1843",
      other_names: "1781/1800: Jonas Harl; Harl's widow",
      follows: "jonas-harl",
      follows_how: "inheritance",
    });
    expect(read).toMatchObject({
      value: {
        otherNames: [
          { period: "1781/1800", name: "Jonas Harl" },
          { period: "", name: "Harl's widow" },
        ],
        follows: ["jonas-harl"],
        followsHow: "inheritance",
      },
    });
  });
});

describe("the columns of a photograph", () => {
  it("carry a region and a scale", () => {
    const read = photographFromColumns({
      ...photograph,
      region: "10,20,100,80",
      turn: "15",
      pixels_per_mm: "9.5",
    });
    expect(read).toMatchObject({
      value: { box: { x: 10, y: 20, width: 100, height: 80 }, turn: 15, pixelsPerMm: 9.5 },
    });
  });

  it("may carry a turned region that reaches past the edges", () => {
    const read = photographFromColumns({ ...photograph, region: "-43,134,413,198", turn: "94" });
    expect(read).toMatchObject({ value: { box: { x: -43, width: 413 }, turn: 94 } });
  });

  it.each(["../secret.png", "/etc/passwd", "a/../../b.png", "C:\\x.png"])(
    "may not name %s outside the folder",
    (file) => {
      expect(photographFromColumns({ ...photograph, file })).toMatchObject({
        error: [{ field: "file", rule: "file-inside" }],
      });
    },
  );

  it("must say licence and credit", () => {
    expect(photographFromColumns({ ...photograph, licence: "", credit: "" })).toMatchObject({
      error: [
        { field: "licence", rule: "required" },
        { field: "credit", rule: "required" },
      ],
    });
  });
});
