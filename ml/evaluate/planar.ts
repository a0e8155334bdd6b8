import { readFile } from "node:fs/promises";
import { join } from "node:path";
import sharp from "sharp";
import { type Homography, through } from "../homography.ts";
import { alignPhotographs } from "../verify.ts";
import { mean } from "./metrics.ts";

export type PlanarFigures = {
  /** Where the corners of graf1.png land in graf3.png, found against true: mean distance in pixels. */
  readonly meanCornerError: number;
  readonly points: number;
  /** box.png in box_in_scene.png. */
  readonly boxFound: boolean;
  readonly boxPoints: number;
  readonly ms: number;
};

/**
 * Alignment against the known homography of OpenCV's sample pair: `graf1.png`, `graf3.png` and `H1to3p.xml`
 * (Mikolajczyk and Schmid's test data), and `box.png` in `box_in_scene.png`, all in one folder.
 * @throws Error when a file is missing or holds no 3 x 3 matrix
 */
export async function measurePlanar(folder: string): Promise<PlanarFigures> {
  const truth = await readHomography(join(folder, "H1to3p.xml"));
  const align = (query: string, reference: string) =>
    alignPhotographs(
      { photograph: join(folder, query), region: null },
      { photograph: join(folder, reference), region: null },
    );
  const { width, height } = await sharp(join(folder, "graf1.png")).metadata();
  const before = performance.now();
  const graf = await align("graf1.png", "graf3.png");
  const ms = performance.now() - before;
  const box = await align("box.png", "box_in_scene.png");
  const corners = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;
  return {
    meanCornerError: mean(corners.map((corner) => distance(graf.homography, truth, corner))),
    points: graf.inliers,
    boxFound: box.plausible,
    boxPoints: box.inliers,
    ms,
  };
}

/** The truth counts from the centre of the first pixel, an alignment from its corner. */
function distance(found: Homography | null, truth: Homography, [x, y]: readonly [number, number]): number {
  if (!found) return Number.POSITIVE_INFINITY;
  const [a, b] = through(found, x + 0.5, y + 0.5);
  const [c, d] = through(truth, x, y);
  return Math.hypot(a - 0.5 - c, b - 0.5 - d);
}

async function readHomography(path: string): Promise<Homography> {
  const text = await readFile(path, "utf8").catch((cause: unknown) => {
    throw new Error(`--planar: must hold ${path}.`, { cause });
  });
  const numbers = (/<data>([^<]*)<\/data>/.exec(text)?.[1] ?? "").trim().split(/\s+/).map(Number);
  const [a, b, c, d, e, f, g, h, i] = numbers;
  if (numbers.length !== 9 || !numbers.every(Number.isFinite) || i === undefined)
    throw new Error(`${path}: must hold nine numbers in <data>. Received ${numbers.length}.`);
  return [a ?? 0, b ?? 0, c ?? 0, d ?? 0, e ?? 0, f ?? 0, g ?? 0, h ?? 0, i];
}
