import type { Alignment } from "./alignment.ts";

type Point = Alignment["points"][number];

/**
 * A few of the points that agree, as far from each other on the reference as they can be: each next one is the one
 * farthest from all those taken before. In the order of reading, from the top.
 */
export function spreadPoints(points: readonly Point[], most: number): readonly Point[] {
  const [first, ...rest] = points;
  if (!first) return [];
  const taken = [first];
  let left = rest.map((point) => ({ point, far: distance(point, first) }));
  while (taken.length < most && left.length > 0) {
    const farthest = left.reduce((a, b) => (b.far > a.far ? b : a));
    if (farthest.far === 0) break;
    taken.push(farthest.point);
    left = left
      .filter(({ point }) => point !== farthest.point)
      .map(({ point, far }) => ({ point, far: Math.min(far, distance(point, farthest.point)) }));
  }
  return taken.toSorted((a, b) => a.reference[1] - b.reference[1] || a.reference[0] - b.reference[0]);
}

const distance = (a: Point, b: Point) =>
  Math.hypot(a.reference[0] - b.reference[0], a.reference[1] - b.reference[1]);
