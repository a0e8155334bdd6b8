import { describe, expect, it } from "vitest";
import { readAmount } from "#core/object-files/measure";
import { measureByScale } from "#core/object-files/measure-by-scale";
import type { Measured } from "#core/object-files/vocabulary";

function read(amount: string, unit = "mm", within = "", measured: Measured = "length") {
  const result = readAmount({ amount, unit, within }, measured);
  return result.ok
    ? [result.value.amount, result.value.within]
    : `${result.error.field} ${result.error.rule}`;
}

describe("a measure as people write it", () => {
  it.each([
    ["16", "cm", "", [160, 5]],
    ["16.5", "cm", "", [165, 0.5]],
    ["16,5 cm", "mm", "", [165, 0.5]],
    ["160", "mm", "", [160, 0.5]],
    ["6 1/2", "in", "", [165.1, 6.35]],
    ["6-1/2 inches", "mm", "", [165.1, 6.35]],
    ["6½″", "mm", "", [165.1, 6.35]],
    ["3/8 in", "cm", "", [9.525, 1.5875]],
    ["6 1/16 in.", "cm", "", [153.9875, 0.7938]],
    ["22 ± 0.3", "cm", "", [220, 3]],
    ["22 +- 0,3 cm", "mm", "", [220, 3]],
    ["22", "cm", "0.4", [220, 4]],
    ["16.6", "cm", "2 mm", [166, 2]],
    ["6 1/2 in", "mm", "1/8 inch", [165.1, 3.175]],
    ["16.6", "cm", "2 ells", "within measure-within"],
    ["0", "cm", "", "amount measure-range"],
    ["2000", "cm", "", "amount measure-range"],
    ["abc", "cm", "", "amount measure-number"],
    ["6 1/0", "in", "", "amount measure-number"],
    ["16 ells", "cm", "", "unit one-of"],
    ["", "cm", "", "amount measure-number"],
    ["-3", "cm", "", "amount measure-number"],
    ["3", "cm", "4", "within measure-within"],
    ["3", "cm", "about", "within measure-within"],
  ])("%s in %s, off by %s", (amount, unit, within, expected) =>
    expect(read(amount, unit, within)).toEqual(expected),
  );

  it.each([
    ["412", "g", [412, 0.5]],
    ["1 1/2 lb", "g", [680.3886, 113.3981]],
    ["12 oz", "g", [340.1943, 14.1748]],
    ["12 cm", "g", "unit one-of"],
  ])("a weight of %s", (amount, unit, expected) =>
    expect(read(amount, unit, "", "weight")).toEqual(expected),
  );

  it("keeps what was typed, with its unit", () => {
    const kept = (amount: string) => readAmount({ amount, unit: "in", within: "" }, "width");
    expect(kept("6 1/2")).toMatchObject({ value: { typed: "6 1/2 in" } });
    expect(kept("16 cm")).toMatchObject({ value: { typed: "16 cm" } });
  });
});

describe("a length by a scale in the photograph", () => {
  const stretch = (x: number, y: number) =>
    [
      { x: 10, y: 20 },
      { x: 10 + x, y: 20 + y },
    ] as const;

  it("is 50 mm for 300 and 400 pixels by a scale of 10 mm in 100, to within the root of 52 tenths", () => {
    const scale = stretch(100, 0);
    const measured = measureByScale({ scale, scaleMm: 10, object: stretch(300, 400), pointWithin: 1 });
    expect(measured.ok && measured.value.millimetres).toBeCloseTo(50, 12);
    // 50 * sqrt(2) * sqrt(1/500² + 1/100²) = 50 * sqrt(52 / 250000) = sqrt(52) / 10
    expect(measured.ok && measured.value.within).toBeCloseTo(Math.sqrt(52) / 10, 12);
  });

  it("agrees with what comes of points that are really off", () => {
    let state = 7;
    const uniform = () => {
      state = (state * 1664525 + 1013904223) % 4294967296;
      return (state + 0.5) / 4294967296;
    };
    const off = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const jitter = ([a, b]: ReturnType<typeof stretch>) =>
      [a, b].map(({ x, y }) => ({ x: x + off(), y: y + off() })) as unknown as ReturnType<typeof stretch>;
    const lengths = Array.from({ length: 20_000 }, () => {
      const drawn = { scale: jitter(stretch(100, 0)), object: jitter(stretch(300, 400)) };
      const measured = measureByScale({ ...drawn, scaleMm: 10, pointWithin: 1 });
      return measured.ok ? measured.value.millimetres : Number.NaN;
    });
    const mean = lengths.reduce((a, b) => a + b, 0) / lengths.length;
    const spread = Math.sqrt(lengths.reduce((a, b) => a + (b - mean) ** 2, 0) / lengths.length);
    expect(spread / (Math.sqrt(52) / 10)).toBeGreaterThan(0.97);
    expect(spread / (Math.sqrt(52) / 10)).toBeLessThan(1.03);
  });

  it.each(["scale", "object"] as const)("refuses a %s of two points that are one", (field) => {
    const ends = { scale: stretch(100, 0), object: stretch(50, 0), [field]: stretch(3, 4) };
    const measured = measureByScale({ ...ends, scaleMm: 10, pointWithin: 1 });
    expect(measured).toMatchObject({ ok: false, error: { field, rule: "stretch-short", received: "5" } });
  });
});
