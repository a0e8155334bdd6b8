/** A plane seen twice: nine numbers, row by row, that take a point of one photograph into the other. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** Four corners in order round a box, in pixels. */
export type Corners = readonly (readonly [number, number])[];

/** Where a point lands; infinite on the horizon. */
export function through(h: Homography, x: number, y: number): readonly [number, number] {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/**
 * The same homography between pictures whose pixels are another size.
 * @param from pixels of the wanted query to one of the given one's
 * @param to pixels of the wanted reference to one of the given one's
 */
export function rescaled(h: Homography, from: number, to: number): Homography {
  const [a, b, c, d, e, f, g, i, j] = h;
  return [
    (a * to) / from,
    (b * to) / from,
    c * to,
    (d * to) / from,
    (e * to) / from,
    f * to,
    g / from,
    i / from,
    j,
  ];
}

/** Larger side of a local stretching to the smaller: one over the cosine of a slant of 63 degrees. */
const STRONGEST_SLANT = 2.2;
/** Local enlargement, both ways. */
const LARGEST_SCALE = 4;
/** Nearest to farthest corner: how much larger the one is shown than the other. */
const STRONGEST_PERSPECTIVE = 2.5;

/**
 * Could two photographs of one flat mark differ so? No mirror, no horizon across it, no collapse to a line, no
 * enlargement out of bounds. Judged by the Jacobian at the corners of the query's box, since between them it
 * changes evenly. The bounds are our own; pairs of the demo's photographs stay well inside.
 * @param h between pictures in which both marks are about the same size
 */
export function isPlausible(h: Homography, corners: Corners): boolean {
  if (!h.every(Number.isFinite)) return false;
  const scales: number[] = [];
  for (const [x, y] of corners) {
    const w = h[6] * x + h[7] * y + h[8];
    if (w * h[8] <= 0) return false;
    const [u, v] = through(h, x, y);
    const a = (h[0] - u * h[6]) / w;
    const b = (h[1] - u * h[7]) / w;
    const c = (h[3] - v * h[6]) / w;
    const d = (h[4] - v * h[7]) / w;
    const area = a * d - b * c;
    if (!(area > 0)) return false;
    const half = (a * a + b * b + c * c + d * d) / 2;
    const largest = Math.sqrt(half + Math.sqrt(Math.max(0, half * half - area * area)));
    if (largest / (area / largest) > STRONGEST_SLANT) return false;
    const scale = Math.sqrt(area);
    if (scale > LARGEST_SCALE || scale < 1 / LARGEST_SCALE) return false;
    scales.push(scale);
  }
  return Math.max(...scales) / Math.min(...scales) <= STRONGEST_PERSPECTIVE;
}
