import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { type Box, overlap } from "../overlap.ts";
import { proposeRegions } from "../propose.ts";
import type { Progress } from "./measure.ts";
import { areaUnderRoc, mean, median } from "./metrics.ts";

/** How well one method finds the mark in whole photographs. */
export type RegionFigures = {
  readonly photographs: number;
  /** Photographs that show a mark; the overlaps are theirs. */
  readonly marks: number;
  /** Mean overlap (IoU) of the first proposal with the box of the mark that counts. */
  readonly meanIou: number;
  readonly above50: number;
  readonly above75: number;
  /** Of the best of up to three proposals; null for a method that makes one. */
  readonly above50OfThree: number | null;
  /** Right boxes against wrong ones and photographs without a mark, by confidence; null without a confidence. */
  readonly auroc: number | null;
  /** From the encoded photograph to the proposals. */
  readonly medianMs: number;
};

type Found = { readonly box: Box; readonly confidence: number | null };
type Finder = (photograph: string) => Promise<readonly Found[]>;
type Scene = { readonly path: string; readonly truth: Box | null };

/** The shipped network. */
export const findByNetwork: Finder = async (photograph) =>
  (await proposeRegions(photograph)).map(({ region, confidence }) => ({ box: region, confidence }));

/**
 * Measures a method over a folder as ml/train/scenes.py writes it: photographs, and `regions.json`, a list of
 * `{ "file": "s0001.webp", "boxes": [[x, y, width, height], ...] }` in pixels of the upright photograph. The first
 * box is the mark that counts; no box says that the photograph shows no mark.
 * @throws Error naming the file and what is wrong with it
 */
export async function measureRegions(
  folder: string,
  name: string,
  find: Finder,
  progress: Progress,
): Promise<RegionFigures> {
  const scenes = await readScenes(folder);
  const ious: number[] = [];
  const three: number[] = [];
  const right: number[] = [];
  const wrong: number[] = [];
  const milliseconds: number[] = [];
  for (const [i, { path, truth }] of scenes.entries()) {
    const before = performance.now();
    const found = await find(path);
    milliseconds.push(performance.now() - before);
    const overlaps = found.map(({ box }) => (truth ? overlap(box, truth) : 0));
    const [first = 0] = overlaps;
    if (truth) {
      ious.push(first);
      three.push(Math.max(0, ...overlaps));
    }
    (first >= 0.5 ? right : wrong).push(found[0]?.confidence ?? 0);
    progress(name, i + 1, scenes.length);
  }
  const share = (values: readonly number[], limit: number) => mean(values.map((v) => (v > limit ? 1 : 0)));
  const isConfident = right.some((confidence) => confidence > 0);
  return {
    photographs: scenes.length,
    marks: ious.length,
    meanIou: mean(ious),
    above50: share(ious, 0.5),
    above75: share(ious, 0.75),
    above50OfThree: isConfident ? share(three, 0.5) : null,
    auroc: isConfident && wrong.length > 0 ? areaUnderRoc(right, wrong) : null,
    medianMs: median(milliseconds),
  };
}

async function readScenes(folder: string): Promise<Scene[]> {
  const path = join(folder, "regions.json");
  const text = await readFile(path, "utf8").catch((cause: unknown) => {
    throw new Error(`--regions: must be a folder with regions.json in it. Received ${folder}.`, { cause });
  });
  const listed: unknown = JSON.parse(text);
  if (!Array.isArray(listed) || listed.length === 0)
    throw new Error(
      `${path}: must be a list of photographs with their boxes. Received ${text.slice(0, 60)}.`,
    );
  return listed.map((entry: unknown) => readScene(entry, folder, path));
}

function readScene(entry: unknown, folder: string, path: string): Scene {
  const refuse = (): never => {
    throw new Error(
      `${path}: each photograph must be {"file", "boxes"}, a box four numbers, x, y, width and height. ` +
        `Received ${JSON.stringify(entry)}.`,
    );
  };
  if (typeof entry !== "object" || entry === null || !("file" in entry) || !("boxes" in entry))
    return refuse();
  const { file, boxes } = entry;
  if (typeof file !== "string" || !Array.isArray(boxes)) return refuse();
  const [first]: unknown[] = boxes;
  if (first === undefined) return { path: join(folder, file), truth: null };
  if (!Array.isArray(first)) return refuse();
  const [x, y, width, height]: unknown[] = first;
  const numbers = [x, y, width, height].map((value) => (typeof value === "number" ? value : Number.NaN));
  const [left = 0, top = 0, across = 0, down = 0] = numbers;
  if (!numbers.every(Number.isFinite) || across <= 0 || down <= 0) return refuse();
  return { path: join(folder, file), truth: { x: left, y: top, width: across, height: down } };
}
