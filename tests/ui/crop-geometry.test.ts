import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkRegion, type Region } from "#core/photographs/region";
import {
  isWhole,
  regionOf,
  rounded,
  shown,
  towards,
  turned,
  turnedSize,
} from "../../app/_ui/look-up/crop-geometry.ts";

const image = { width: 400, height: 300 };
const turn = fc.integer({ min: -180, max: 180 });
const inside: fc.Arbitrary<Region> = fc
  .record({
    x: fc.integer({ min: 0, max: 300 }),
    y: fc.integer({ min: 0, max: 200 }),
    width: fc.integer({ min: 10, max: 100 }),
    height: fc.integer({ min: 10, max: 100 }),
    turn,
  })
  .filter((region) => checkRegion(region, image).ok);

describe("a region on the turned photograph", () => {
  it("is where it was when it is not turned", () => {
    const region = { x: 10, y: 20, width: 30, height: 40, turn: 0 };
    expect(shown(region, image)).toEqual({ x: 10, y: 20, width: 30, height: 40 });
  });

  it("lies at the right after a quarter turn clockwise when it lay at the top", () => {
    // Middle of the top edge of a 400 x 300 photograph; turned, it is the middle of the right edge of a 300 x 400 one.
    const box = shown({ x: 190, y: 0, width: 20, height: 20, turn: 90 }, image);
    expect(turnedSize(image, 90)).toEqual({ width: 300, height: 400 });
    expect(box).toEqual({ x: 280, y: 190, width: 20, height: 20 });
  });

  it("comes back as the region it was", () => {
    fc.assert(
      fc.property(inside, (region) => {
        const back = regionOf(shown(region, image), image, region.turn);
        for (const key of ["x", "y", "width", "height"] as const)
          expect(back[key]).toBeCloseTo(region[key], 6);
        expect(back.turn).toBe(region.turn);
      }),
    );
  });
});

describe("moving a region", () => {
  const free = fc.integer({ min: -500, max: 900 });
  it("never leaves what the reference allows, however far it is dragged", () => {
    fc.assert(
      fc.property(inside, free, free, (region, x, y) => {
        expect(checkRegion(towards(region, { ...region, x, y }, image), image).ok).toBe(true);
      }),
    );
  });

  it("goes all the way where it is allowed", () => {
    const from = { x: 0, y: 0, width: 50, height: 50, turn: 0 };
    expect(towards(from, { ...from, x: 350, y: 250 }, image)).toEqual({ ...from, x: 350, y: 250 });
  });

  it("stops at the edge, not short of it", () => {
    const from = { x: 0, y: 0, width: 50, height: 50, turn: 0 };
    expect(towards(from, { ...from, x: 700 }, image).x).toBeGreaterThan(349.9);
  });

  it("stays about its centre when it is turned, and is allowed", () => {
    fc.assert(
      fc.property(inside, turn, (region, degrees) => {
        const next = turned(region, degrees, image);
        expect(checkRegion(next, image).ok).toBe(true);
        expect(next.turn).toBe(degrees);
      }),
    );
  });
});

describe("turning a region", () => {
  const tall = { width: 384, height: 480 };
  const whole = { x: 0, y: 0, width: 384, height: 480, turn: 0 };
  const quarter = fc.constantFrom(-180, -90, 0, 90, 180);

  it("keeps the whole photograph whole, and lying on its sheet, at every quarter turn", () => {
    const right = turned(whole, 90, tall);
    expect(shown(right, tall)).toEqual({ x: 0, y: 0, width: 480, height: 384 });
    expect(isWhole(right, tall)).toBe(true);
    expect(turned(right, 0, tall)).toEqual(whole);
  });

  it("sends the whole photograph turned by a quarter as it is, though its box begins outside", () => {
    expect(rounded(turned(whole, 90, tall))).toEqual({ x: -48, y: 48, width: 480, height: 384, turn: 90 });
  });

  it("turns the frame along with the photograph, by a quarter, and back to where it was", () => {
    fc.assert(
      fc.property(inside, quarter, (region, turn) => {
        const from = { ...region, turn: 0 };
        const there = turned(from, turn, image);
        const sides = [from.width, from.height];
        expect([there.width, there.height]).toEqual(Math.abs(turn) === 90 ? sides.reverse() : sides);
        expect(turned(there, 0, image)).toEqual(from);
      }),
    );
  });

  it("never lets the frame reach past the sheet that the photograph is shown on", () => {
    fc.assert(
      fc.property(inside, turn, (region, degrees) => {
        const start = { ...region, turn: 0 };
        const box = shown(turned(start, degrees, image), image);
        const sheet = turnedSize(image, degrees);
        expect(box.x).toBeGreaterThan(-0.001);
        expect(box.y).toBeGreaterThan(-0.001);
        expect(box.x + box.width).toBeLessThan(sheet.width + 0.001);
        expect(box.y + box.height).toBeLessThan(sheet.height + 0.001);
      }),
    );
  });
});

it("takes only a box over all of the photograph for the whole of it", () => {
  expect(isWhole({ x: 0, y: 0, ...image, turn: 0 }, image)).toBe(true);
  expect(isWhole({ x: 0, y: 0, width: 400, height: 290, turn: 0 }, image)).toBe(false);
  expect(isWhole({ x: 0, y: 0, ...image, turn: 30 }, image)).toBe(false);
});
