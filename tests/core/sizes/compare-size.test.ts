import { describe, expect, it } from "vitest";
import { fitsSize } from "#core/sizes/compare-size";

describe("a measured size beside a catalogued one", () => {
  const catalogued = { width: 30, height: 10 };
  it.each([
    ["the same", { width: 30, height: 10 }, true],
    ["an eighth shrunk", { width: 26.4, height: 9 }, true],
    ["more than an eighth", { width: 26.3, height: 10 }, false],
    ["a millimetre off where that is the more", { width: 30, height: 11.1 }, true],
    ["lying instead of upright", { width: 10, height: 30 }, true],
    ["the width alone", { width: 31, height: null }, true],
    ["the height alone", { width: null, height: 10.5 }, true],
    ["a width that would fit the height", { width: 10, height: null }, false],
    ["another size altogether", { width: 80, height: 60 }, false],
    ["nothing measured", { width: null, height: null }, null],
  ] as const)("%s", (_, measured, fits) => expect(fitsSize(measured, catalogued)).toBe(fits));

  it("allows a millimetre on the smallest punches", () => {
    expect(fitsSize({ width: 5, height: null }, { width: 4, height: 4 })).toBe(true);
    expect(fitsSize({ width: 5.1, height: null }, { width: 4, height: 4 })).toBe(false);
  });
});
