import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";

/**
 * The region of interest of a photograph: the box that holds the mark, in pixels of the upright image
 * (after the camera's own orientation), and `turn`, the degrees clockwise by which the photograph is turned
 * about the centre of the box before the box is cut.
 */
export type Region = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
};

export const SMALLEST_REGION = 8;

export const wholeOf = (image: { width: number; height: number }): Region => ({
  x: 0,
  y: 0,
  width: image.width,
  height: image.height,
  turn: 0,
});

/** Checks that a region lies inside its image and is large enough to hold a mark. */
export function checkRegion(
  region: Region,
  image: { width: number; height: number },
  field = "region",
): Result<Region, FieldError> {
  const numbers = [region.x, region.y, region.width, region.height, region.turn];
  if (!numbers.every(Number.isFinite))
    return fail({ field, rule: "region-numbers", received: received(region) });
  if (region.width < SMALLEST_REGION || region.height < SMALLEST_REGION)
    return fail({
      field,
      rule: "region-size",
      received: `${region.width} x ${region.height}`,
      params: { smallest: SMALLEST_REGION },
    });
  if (!liesInside(region, image))
    return fail({
      field,
      rule: "region-inside",
      received: received(region),
      params: { width: image.width, height: image.height },
    });
  return ok({ ...region, turn: ((region.turn % 360) + 360) % 360 });
}

/**
 * An upright box lies inside the image. A turned one may reach past the edges, as the box of a wide mark does in a
 * tall photograph turned by a quarter; its centre lies inside, and it is no longer than the image's diagonal.
 */
function liesInside(region: Region, image: { width: number; height: number }): boolean {
  const { x, y, width, height, turn } = region;
  if (turn % 360 === 0)
    return x >= 0 && y >= 0 && x + width <= image.width + 0.5 && y + height <= image.height + 0.5;
  const centre = { x: x + width / 2, y: y + height / 2 };
  const diagonal = Math.hypot(image.width, image.height);
  return (
    centre.x >= 0 &&
    centre.y >= 0 &&
    centre.x <= image.width &&
    centre.y <= image.height &&
    Math.max(width, height) <= diagonal
  );
}

/** Part of the region's longer side that is added all round where the photograph has it. */
const MARGIN = 0.125;

/**
 * The region with a margin, as far as the photograph reaches. References are framed tightly, the photographs people
 * look up are not: with a margin the two meet half-way. On the demo's photographs, each looked up uncropped among
 * the others, the right entry came first for 78 in 100 instead of 70, and for 96 in 100 as before when cropped.
 */
export function withMargin(region: Region, image: { width: number; height: number }): Region {
  const { x, y, width, height } = region;
  const room = Math.min(x, y, image.width - x - width, image.height - y - height);
  const margin = Math.max(0, Math.min(MARGIN * Math.max(width, height), room));
  return { ...region, x: x - margin, y: y - margin, width: width + 2 * margin, height: height + 2 * margin };
}

/** A region of the image as it came, in pixels of the image as it is kept. */
export function scaleRegion(region: Region, factor: number): Region {
  if (factor === 1) return region;
  return {
    x: region.x * factor,
    y: region.y * factor,
    width: region.width * factor,
    height: region.height * factor,
    turn: region.turn,
  };
}
