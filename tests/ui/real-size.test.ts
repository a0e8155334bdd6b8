import { describe, expect, it } from "vitest";
import type { Photograph } from "#core/photographs/photograph";
import { plausibleMm, realSizeRatio } from "../../app/_ui/compare/real-size.ts";

/** A photograph whose region shows 20 mm by 10 mm. */
const photograph = {
  region: { x: 0, y: 0, width: 200, height: 100, turn: 0 },
  pixelsPerMm: 10,
} as Photograph;
const query = { x: 0, y: 0, width: 50, height: 100, turn: 0 };

describe("two photographs at the same real size", () => {
  it("are scaled by their longer sides", () => {
    // 10 mm across is 20 mm along the query's longer side: as large as the reference's.
    expect(realSizeRatio(query, photograph, 10)).toBe(1);
    expect(realSizeRatio(query, photograph, 5)).toBe(2);
    expect(realSizeRatio(query, photograph, Number.NaN)).toBeNull();
  });

  it("may differ by five times either way, and no more", () => {
    const plausible = plausibleMm(query, photograph);
    expect(plausible).toEqual({ min: 2, max: 50 });
    expect(realSizeRatio(query, photograph, plausible?.min ?? 0)).toBe(5);
    expect(realSizeRatio(query, photograph, plausible?.max ?? 0)).toBe(0.2);
  });

  it("are not offered while the scale is not known", () => {
    expect(plausibleMm(query, { ...photograph, pixelsPerMm: null })).toBeNull();
  });
});
