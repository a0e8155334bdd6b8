import { expect, it } from "vitest";
import { describeGradients, GRADIENTS_SIDE } from "#ml/evaluate/gradients";

const picture = (at: (x: number, y: number) => number) =>
  Float32Array.from({ length: GRADIENTS_SIDE ** 2 }, (_, i) =>
    at(i % GRADIENTS_SIDE, Math.floor(i / GRADIENTS_SIDE)),
  );

/** How much of the description lies in each of the nine orientations. */
const byOrientation = (description: Float32Array) =>
  Array.from({ length: 9 }, (_, bin) =>
    description.reduce((sum, value, i) => sum + (i % 9 === bin ? value ** 2 : 0), 0),
  );

// Dalal and Triggs, CVPR 2005, section 6: 15 x 15 overlapping blocks of 2 x 2 cells with 9 orientations.
it("describes 128 x 128 pixels by 8100 numbers of unit length", () => {
  const description = describeGradients(picture((x, y) => Math.sin(x / 5) * Math.cos(y / 7)));
  expect(description).toHaveLength(15 * 15 * 4 * 9);
  expect(Math.hypot(...description)).toBeCloseTo(1, 5);
});

it("puts a slope to the right on either side of 0 degrees: the first and the last orientation", () => {
  const shares = byOrientation(describeGradients(picture((x) => x)));
  expect((shares[0] ?? 0) + (shares[8] ?? 0)).toBeCloseTo(1, 4);
});

it("puts a slope downwards into the fifth orientation, which is centred on 90 degrees", () => {
  expect(byOrientation(describeGradients(picture((_, y) => y)))[4]).toBeCloseTo(1, 4);
});

it("does not tell a slope from its opposite, nor a bright picture from a dark one", () => {
  const up = describeGradients(picture((x, y) => x + 2 * y));
  expect(describeGradients(picture((x, y) => 7 - x - 2 * y))).toEqual(up);
});

it("describes an even picture by nothing", () => {
  expect(Math.max(...describeGradients(picture(() => 3)))).toBe(0);
});
