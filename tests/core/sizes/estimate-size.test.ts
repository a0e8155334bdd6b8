import { describe, expect, it } from "vitest";
import { estimateSize } from "#core/sizes/estimate-size";
import type { CataloguedLine, Convention, Measurement } from "#core/sizes/line";
import { readSizeForm } from "#core/sizes/read-size-form";

const line = (convention: Convention | null): CataloguedLine => ({
  sizes: [170, 220, 280].map((millimetres) => ({ name: String(millimetres / 10), millimetres })),
  convention,
});
const high: Measurement = { convention: "height-standing", millimetres: 160, within: 5 };
const long: Measurement = { convention: "length", millimetres: 220, within: 5 };

describe("sizes 17, 22 and 28 cm; 16 cm high and 22 cm long", () => {
  it("is the smallest if the catalogue gives heights", () => {
    const { under, verdict } = estimateSize(line("height-standing"), [high, long], "stuffed");
    expect([verdict, under.length, under[0]?.best?.name]).toEqual(["one-way", 1, "17"]);
    expect(under[0]?.sizes[0]?.probability).toBeGreaterThan(0.9);
  });

  it("is the middle one if it gives lengths", () => {
    const { under } = estimateSize(line("length"), [high, long], "stuffed");
    expect(under[0]?.best?.name).toBe("22");
    expect(under[0]?.sizes[1]?.probability).toBeGreaterThan(0.9);
  });

  it("is named as ambiguous while nobody knows which, and what would settle it is said", () => {
    const { under, verdict, toSettle } = estimateSize(line(null), [high, long], "stuffed");
    expect(verdict).toBe("conventions-disagree");
    expect(under.map((each) => [each.convention, each.best?.name])).toEqual([
      ["height-standing", "17"],
      ["length", "22"],
    ]);
    const between = ["height-standing", "length"];
    expect(toSettle).toEqual([
      { step: "find-convention", between },
      { step: "measure-known-example", between },
    ]);
  });
});

describe("a measured size", () => {
  it("gives probabilities that sum to 1 with that of none", () => {
    const { under } = estimateSize(line("length"), [{ ...long, millimetres: 195 }], "stuffed");
    const total = under[0]?.sizes.reduce((all, { probability }) => all + probability, under[0].none);
    expect(total).toBeCloseTo(1, 12);
  });

  it("is none of them when nobody catalogued it", () => {
    const { under } = estimateSize(line("length"), [{ ...long, millimetres: 250, within: 2 }], "rigid");
    expect([under[0]?.best, (under[0]?.none ?? 0) > 0.9]).toEqual([null, true]);
  });

  it("does not speak of sizes taken another way: the catalogue's way is asked for", () => {
    expect(estimateSize(line("height-seated"), [high, long], "stuffed")).toEqual({
      under: [],
      verdict: "nothing-to-compare",
      toSettle: [{ step: "measure", convention: "height-seated" }],
    });
  });

  it("taken twice counts twice", () => {
    const chance = (...taken: Measurement[]) =>
      estimateSize(line("length"), taken, "stuffed").under[0]?.sizes[1]?.probability ?? 0;
    expect(chance(long, { ...long, millimetres: 215 })).toBeGreaterThan(chance(long));
  });

  it("leaves nothing ambiguous when both ways give the same size", () => {
    const both = estimateSize(line(null), [{ ...high, millimetres: 215 }, long], "stuffed");
    expect([both.verdict, both.toSettle]).toEqual(["conventions-agree", []]);
  });
});

describe("the form of sizes", () => {
  it.each(["17, 22, 28", "17/22/28", "17; 22; 28", "17,22,28", "17 22 28", "17, 22, 28 cm"])(
    "reads %s",
    (sizes) => {
      expect(readSizeForm({ sizes }).line.sizes.map((each) => each.millimetres)).toEqual([170, 220, 280]);
    },
  );

  it("reads inches, decimal commas and how far off a measure may be", () => {
    const read = readSizeForm({
      sizes: "6,5; 9",
      unit: "in",
      length: "8,5 ± 0,25",
      catalogue: "length",
      making: "rigid",
    });
    expect(read).toMatchObject({
      line: { sizes: [{ name: "6,5", millimetres: 6.5 * 25.4 }, { name: "9" }], convention: "length" },
      measurements: [{ convention: "length", millimetres: 8.5 * 25.4, within: 6.35 }],
      making: "rigid",
      errors: [],
    });
  });

  it("names what it can't read", () => {
    expect(readSizeForm({ sizes: "small, 22", length: "long" }).errors).toEqual([
      { field: "sizes", rule: "size-number", received: "small" },
      { field: "length", rule: "measure", received: "long" },
    ]);
  });
});
