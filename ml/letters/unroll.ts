import type { Grey } from "../square.ts";
import { resample } from "./resample.ts";

/** The band that is unrolled, as shares of the way from the centre to the edge of the picture. */
const INNER = 0.4;
const OUTER = 1.06;
/** The strip goes on past a whole round by so much, so that no word is cut where it begins. */
const OVERLAP = 0.2;

/**
 * Unrolls what stands round the centre of a picture, on the largest ellipse in it: clockwise from below, the outside
 * on top, so that writing whose heads point outwards lies level and the rest upside down.
 * @returns the strip; its last sixth repeats its beginning
 */
export function unroll(picture: Grey): Grey {
  const [radiusX, radiusY] = [picture.width / 2, picture.height / 2];
  const radius = (radiusX + radiusY) / 2;
  const height = Math.max(1, Math.round(radius * (OUTER - INNER)));
  // True to size where letters mostly stand.
  const round = 2 * Math.PI * radius * 0.82;
  const width = Math.max(1, Math.round(round * (1 + OVERLAP)));
  return resample(picture, width, height, (x, y) => {
    const angle = (2 * Math.PI * x) / round + Math.PI / 2;
    const share = OUTER - ((OUTER - INNER) * y) / height;
    return [radiusX * (1 + share * Math.cos(angle)), radiusY * (1 + share * Math.sin(angle))];
  });
}

/** How many pixels of a strip make one round. */
export function oneRound(strip: Grey): number {
  return strip.width / (1 + OVERLAP);
}
