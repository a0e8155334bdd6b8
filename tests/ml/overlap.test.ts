import { describe, expect, it } from "vitest";
import { type Box, overlap, uprightBox } from "#ml/overlap";

const box = (x: number, y: number, width: number, height: number): Box => ({ x, y, width, height });

describe("the overlap of two boxes, worked by hand", () => {
  it.each([
    ["the same box", box(3, 4, 10, 20), box(3, 4, 10, 20), 1],
    ["half of it, beside", box(0, 0, 10, 10), box(5, 0, 10, 10), 50 / 150],
    ["a quarter, at a corner", box(0, 0, 10, 10), box(5, 5, 10, 10), 25 / 175],
    ["one inside the other", box(0, 0, 10, 10), box(2, 2, 5, 4), 20 / 100],
    ["a cross", box(0, 4, 12, 4), box(4, 0, 4, 12), 16 / 80],
    ["touching edges", box(0, 0, 10, 10), box(10, 0, 10, 10), 0],
    ["touching corners", box(0, 0, 10, 10), box(10, 10, 4, 4), 0],
    ["far apart", box(0, 0, 10, 10), box(50, 70, 10, 10), 0],
  ])("%s", (_, a, b, expected) => {
    expect(overlap(a, b)).toBeCloseTo(expected, 12);
    expect(overlap(b, a)).toBeCloseTo(expected, 12);
  });
});

describe("the upright box round a turned one", () => {
  it.each([0, 180])("is the same at %i degrees", (degrees) => {
    const { x, y, width, height } = uprightBox(box(10, 20, 30, 8), degrees);
    expect([x, y, width, height].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([10, 20, 30, 8]);
  });

  it("lies across at a quarter turn, about the same centre", () => {
    const { x, y, width, height } = uprightBox(box(10, 20, 30, 8), 90);
    expect([x, y, width, height].map(Math.round)).toEqual([21, 9, 8, 30]);
  });

  it("holds a square on its corner: the diagonal", () => {
    const { x, y, width, height } = uprightBox(box(0, 0, 10, 10), 45);
    for (const side of [width, height]) expect(side).toBeCloseTo(10 * Math.SQRT2, 9);
    for (const edge of [x, y]) expect(edge).toBeCloseTo(5 - 5 * Math.SQRT2, 9);
  });
});
