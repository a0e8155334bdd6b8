import { expect, it } from "vitest";
import { outline, warp } from "../../app/_ui/compare/warp.ts";

/** Where CSS puts a point by a matrix3d, column by column. Source: CSS Transforms Module Level 2. */
function placed(transform: string, x: number, y: number): number[] {
  const m = transform.slice("matrix3d(".length, -1).split(",").map(Number);
  const row = (r: number) => (m[r] ?? 0) * x + (m[4 + r] ?? 0) * y + (m[12 + r] ?? 0);
  return [row(0) / row(3), row(1) / row(3)];
}

const region = { x: 100, y: 40, width: 200, height: 100, turn: 0 };

it("lays a picture where its homography says, in the pixels of the box that the region fills", () => {
  const homography = [0.9, -0.2, 110, 0.25, 1.1, 30, 0.0004, -0.0002, 1.25];
  const transform = warp(homography, region, 0.5);
  for (const [x, y] of [
    [0, 0],
    [300, 20],
    [150, 220],
  ] as const) {
    const w = 0.0004 * x - 0.0002 * y + 1.25;
    const [u, v] = [(0.9 * x - 0.2 * y + 110) / w, (0.25 * x + 1.1 * y + 30) / w];
    const [left, top] = placed(transform, x, y);
    expect(left).toBeCloseTo((u - 100) / 2, 6);
    expect(top).toBeCloseTo((v - 40) / 2, 6);
  }
});

it("outlines a region by its corners, and a turned one by where they lie in the unturned photograph", () => {
  expect(outline(region)).toBe("polygon(100px 40px,300px 40px,300px 140px,100px 140px)");
  const corners = outline({ ...region, turn: 90 })
    .slice("polygon(".length, -1)
    .split(",")
    .map((corner) => corner.split(" ").map((each) => Math.round(Number.parseFloat(each))));
  expect(corners).toEqual([
    [150, 190],
    [150, -10],
    [250, -10],
    [250, 190],
  ]);
});
