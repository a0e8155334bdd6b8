import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { OnScreen, Stretch } from "./object-file.ts";

/** Two ends nearer than this, in pixels, measure nothing. */
const SHORTEST = 8;

/**
 * The length between two points of a photograph, by a scale in it. The length is `scaleMm` times o / s. Each of the four
 * points may be off by `pointWithin` along its stretch, independently, so that either stretch may be off by that times
 * the root of 2, and the shares of both add up in squares:
 *
 *   within = mm * sqrt(2) * pointWithin * sqrt(1 / o² + 1 / s²)
 *
 * Not in it: a scale that lies nearer or farther than what is measured, and a camera held askew.
 */
export function measureByScale(
  on: Omit<OnScreen, "photograph">,
): Result<{ readonly millimetres: number; readonly within: number }, FieldError> {
  const [s, o] = [lengthOf(on.scale), lengthOf(on.object)];
  if (!(s >= SHORTEST)) return refuse("scale", s);
  if (!(o >= SHORTEST)) return refuse("object", o);
  const millimetres = (on.scaleMm * o) / s;
  const within = millimetres * Math.SQRT2 * on.pointWithin * Math.hypot(1 / o, 1 / s);
  return ok({ millimetres, within });
}

function lengthOf([a, b]: Stretch): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function refuse(field: string, pixels: number) {
  return fail({
    field,
    rule: "stretch-short",
    received: received(String(Math.round(pixels * 10) / 10)),
    params: { shortest: SHORTEST },
  });
}
