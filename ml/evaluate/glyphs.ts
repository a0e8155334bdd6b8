import { readFile } from "node:fs/promises";
import { unzipSync } from "fflate";
import { decode } from "../preprocess.ts";
import { likeliest } from "./likeliest.ts";
import type { Progress } from "./measure.ts";
import type { Method } from "./method.ts";
import { mean } from "./metrics.ts";

export type GlyphFigures = { readonly runs: number; readonly drawings: number; readonly accuracy: number };

/**
 * The Omniglot one-shot classification test (Lake, Salakhutdinov and Tenenbaum, Science 350, 2015): in each run
 * every test drawing is given to the class of the training drawing it resembles most.
 * @param path the published all_runs.zip: `run01/class_labels.txt` with lines of a test and a training file
 * @returns the mean over the runs of the share that is right
 * @throws Error when the archive is not laid out so
 */
export async function measureGlyphs(method: Method, path: string, progress: Progress): Promise<GlyphFigures> {
  const files = unzipSync(await readFile(path));
  const lists = Object.keys(files)
    .filter((name) => name.endsWith("class_labels.txt"))
    .sort();
  if (lists.length === 0)
    throw new Error(
      `--glyphs: must be an archive with <run>/class_labels.txt. Received ${path}, none in it.`,
    );
  const read = (name: string) => {
    const file = files[name];
    if (!file) throw new Error(`--glyphs: ${path} must hold ${name}, which its class_labels.txt names.`);
    return decode(Buffer.from(file));
  };
  const accuracies: number[] = [];
  let drawings = 0;
  for (const [run, list] of lists.entries()) {
    const root = list.slice(0, -"run00/class_labels.txt".length);
    const pairs = new TextDecoder()
      .decode(files[list])
      .split("\n")
      .map((line) => line.trim().split(/\s+/))
      .flatMap(([test, training]) =>
        test && training ? [{ test: root + test, training: root + training }] : [],
      );
    const references = [];
    for (const label of [...new Set(pairs.map((p) => p.training))].sort())
      references.push({ label, described: await method.reference(await read(label)) });
    let right = 0;
    for (const { test, training } of pairs)
      if ((await likeliest(method, await read(test), references)) === training) right++;
    drawings += pairs.length;
    accuracies.push(right / pairs.length);
    progress(`${method.name}: glyph runs`, run + 1, lists.length);
  }
  return { runs: lists.length, drawings, accuracy: mean(accuracies) };
}
