import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import sharp from "sharp";
import { openImportFolder } from "#adapters/import-folder";
import type { Region } from "#core/photographs/region";
import { compareLetters, differences } from "#core/reading/compare-letters";
import { parseLegibleLetters } from "#core/reading/legible-letters";
import { plainLetters } from "#core/reading/plain-letters";
import { type LettersProposal, proposeLetters } from "#core/reading/propose-letters";
import { cutRegion } from "#ml/letters/cut-region";
import { readLetters } from "#ml/letters/read-letters";

/**
 * How well the letters of marks are proposed, on the demo's photographs, whose wordings are recorded.
 *
 *   npx tsx scripts/measure-letters.ts [--every 4] [--turned] [--tesseract FOLDER]
 *
 *   --every N            one photograph of so many
 *   --turned             each region turned by another quarter, as if nobody had set it upright
 *   --tesseract FOLDER   also Tesseract, from a folder in which
 *                        `npm install tesseract.js@7.0.0 @tesseract.js-data/eng@1.0.0` was run
 */
const { values } = parseArgs({
  options: {
    every: { type: "string", default: "4" },
    turned: { type: "boolean", default: false },
    tesseract: { type: "string" },
  },
});
const every = Number(values.every);
if (!Number.isInteger(every) || every < 1)
  throw new Error(`--every: must be a whole number above 0. Received ${values.every}.`);

type Sample = { readonly path: string; readonly region: Region; readonly words: string };
type Reader = (sample: Sample) => Promise<readonly LettersProposal[]>;
type Row = Readonly<Record<string, string>>;

const folder = await openImportFolder("seed/demo");
const wordings = new Map(
  folder.entries.map(({ columns }) => [String(columns.key), String(columns.words ?? "")]),
);
const samples = folder.photographs
  .map(({ columns }) => columns as Row)
  .filter((row) => plainLetters(wordings.get(row.entry ?? "") ?? "", { wildcards: false }) !== "")
  .filter((_, i) => i % every === 0)
  .map((row, i): Sample => {
    const [x = 0, y = 0, width = 0, height = 0] = (row.region ?? "").split(",").map(Number);
    const turn = Number(row.turn) + (values.turned ? 90 * (1 + (i % 3)) : 0);
    // A quarter turn about the middle changes the box's sides over, so that it holds the same part of the photograph.
    const lying = values.turned && i % 3 !== 1;
    const region = lying
      ? { x: x + (width - height) / 2, y: y + (height - width) / 2, width: height, height: width, turn }
      : { x, y, width, height, turn };
    return { path: join("seed/demo", row.file ?? ""), region, words: wordings.get(row.entry ?? "") ?? "" };
  });

const ends: (() => Promise<unknown>)[] = [];
type Readings = Awaited<ReturnType<typeof readLetters>>;
const remembered = new Map<Sample, Promise<Readings>>();
/** The readings of a photograph, read once; the time is that of the first to ask. */
const readOnce = (sample: Sample): Promise<Readings> => {
  const reading = remembered.get(sample) ?? readLetters(sample.path, sample.region);
  remembered.set(sample, reading);
  return reading;
};
const only = (along: "lines" | "ring") => async (sample: Sample) =>
  proposeLetters((await readOnce(sample)).filter((reading) => reading.along === along));
const readers: [string, Reader][] = [
  ["PP-OCRv4, lines and ring", async (sample) => proposeLetters(await readOnce(sample))],
  ["  lines alone", only("lines")],
  ["  ring alone", only("ring")],
];
if (values.tesseract) readers.push(["Tesseract, four turns", await tesseract(resolve(values.tesseract))]);
console.log(
  `${samples.length} photographs${values.turned ? ", turned by a quarter, a half, three quarters" : ""}\n`,
);
console.log(
  "reader | nothing read | letters wrong | all right | entry first | in five | ... of any proposal | called clear | ... letters wrong | ms",
);
for (const [name, read] of readers) console.log(`${name} | ${(await measure(read)).join(" | ")}`);
for (const end of ends) await end();

async function measure(read: Reader): Promise<string[]> {
  const [errors, firsts, fives, anyFives, times, clear]: number[][] = [[], [], [], [], [], []];
  let nothing = 0;
  for (const sample of samples) {
    const began = performance.now();
    const proposals = await read(sample);
    times?.push(performance.now() - began);
    const truth = plainLetters(sample.words, { wildcards: false });
    const best = proposals[0]?.letters ?? "";
    if (best === "") nothing++;
    // A doubtful letter is no letter read: it counts as wrong here.
    const read_ = plainLetters(best, { wildcards: true }).replaceAll("?", "\u0000");
    errors?.push(Math.min(1, differences(read_, truth, "whole") / truth.length));
    if (proposals[0]?.clear) clear?.push(errors?.at(-1) ?? 1);
    const places = proposals.map(({ letters }) => placeOf(letters, sample.words));
    firsts?.push(places[0] === 1 ? 1 : 0);
    fives?.push((places[0] ?? 99) <= 5 ? 1 : 0);
    anyFives?.push(Math.min(99, ...places) <= 5 ? 1 : 0);
  }
  const exact = errors?.filter((error) => error === 0).length ?? 0;
  const share = (list: number[] | undefined) => mean(list ?? []).toFixed(3);
  return [
    (nothing / samples.length).toFixed(3),
    share(errors),
    (exact / samples.length).toFixed(3),
    share(firsts),
    share(fives),
    share(anyFives),
    ((clear?.length ?? 0) / samples.length).toFixed(3),
    share(clear),
    `${Math.round(times?.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0)}`,
  ];
}

/** The place of the right wording among all the demo's, by letters alone; what agrees as well stands before it. */
function placeOf(letters: string, words: string): number {
  const read = parseLegibleLetters(letters);
  if (!read.ok || !read.value) return 99;
  const pattern = read.value;
  const grade = (wording: string) => {
    const agreement = compareLetters(pattern, wording);
    if (!agreement || agreement.degree === "not") return 99;
    return ["whole", "part", "near"].indexOf(agreement.degree) * 10 + agreement.differences;
  };
  const own = grade(words);
  if (own === 99) return 99;
  return 1 + new Set([...wordings.values()].filter((w) => w !== words && grade(w) <= own)).size;
}

type Tesseract = {
  createWorker(
    language: string,
    mode: number,
    options: object,
  ): Promise<{
    setParameters(parameters: object): Promise<unknown>;
    terminate(): Promise<unknown>;
    recognize(image: Buffer): Promise<{ data: { text: string; confidence: number } }>;
  }>;
};

async function tesseract(installed: string): Promise<Reader> {
  const from = createRequire(join(installed, "package.json"));
  const worker = await (from("tesseract.js") as Tesseract).createWorker("eng", 1, {
    langPath: join(installed, "node_modules/@tesseract.js-data/eng/4.0.0_best_int"),
    cachePath: installed,
  });
  // Its thread would keep this program from ending.
  ends.push(() => worker.terminate());
  await worker.setParameters({ tessedit_pageseg_mode: "11" });
  return async ({ path, region }) => {
    const found: { letters: string; confidence: number }[] = [];
    for (const quarter of [0, 90, 180, 270]) {
      const { values: grey, width, height } = await cutRegion(path, region, 640);
      const raw = { width, height, channels: 1 as const };
      const image = sharp(
        Uint8Array.from(grey, (v) => Math.round(v * 255)),
        { raw },
      )
        .rotate(quarter)
        .extend({
          top: 24,
          bottom: 24,
          left: 24,
          right: 24,
          extendWith: "copy",
        });
      const { data } = await worker.recognize(await image.png().toBuffer());
      const letters = data.text.trim().replace(/\n+/g, " / ");
      const count = plainLetters(letters, { wildcards: false }).length;
      if (count >= 2) found.push({ letters, confidence: count * (data.confidence / 100 - 0.5) });
    }
    return found
      .sort((a, b) => b.confidence - a.confidence)
      .slice(0, 2)
      .map(({ letters, confidence }) => ({
        letters,
        along: "lines",
        sure: confidence,
        doubtful: 0,
        clear: false,
      }));
  };
}

function mean(list: readonly number[]): number {
  return list.reduce((sum, each) => sum + each, 0) / list.length;
}
