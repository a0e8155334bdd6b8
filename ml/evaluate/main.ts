import { writeFile } from "node:fs/promises";
import { basename } from "node:path";
import { parseArgs } from "node:util";
import { modelFacts } from "../embed.ts";
import { calibrationOf } from "./chances.ts";
import { featureFile } from "./features.ts";
import { readAbsent, readClasses, refuseUnknownClasses } from "./folders.ts";
import { type Calibrated, type Figures, measure, oneByOne, type Progress, together } from "./measure.ts";
import { baseline, type Method, shipped } from "./method.ts";
import type { Known } from "./rank.ts";
import { glyphTable, planarTable, regionsTable, retrievalTable, twinTable } from "./table.ts";

const USAGE = `How well the shipped pipeline finds marks, over any photographs.

  npm run evaluate -- --references DIR --queries DIR [--absent DIR] [--multi] [--baselines] [--verify] [--turns N] [--json]
  npm run evaluate -- --glyphs ZIP [--baselines] [--turns N] [--json]
  npm run evaluate -- --planar DIR [--json]
  npm run evaluate -- --regions DIR [--baselines] [--json]

  --references DIR   photographs to find, as <class>/<image>
  --queries DIR      photographs to find them by, as <class>/<image>, of the same classes
  --absent DIR       photographs of marks that no reference shows
  --multi            all photographs of a class asked together, as several of one mark
  --baselines        also a histogram of oriented gradients and a 64-bit perceptual hash
  --baseline-onnx FILE  also a network from elsewhere: [n, 3, 224, 224] in, its first output compared
  --no-rerank        without comparing the details of the nearest
  --twins DIR        near twins, as own_test.py writes them: DIR/references, DIR/queries of <pair>a and <pair>b
  --verify           also the best 50 re-ranked by how well they can be laid over the query
  --reliability FILE also how often what was given each probability was so, as JSON
  --features FILE    also write what probabilities are fitted on, a query a line
  --sizes N,N,...    in that file, each query against references drawn from so many classes
  --turns N          directions a query is turned to (default: the model's own)
  --glyphs ZIP       the Omniglot one-shot test, all_runs.zip
  --planar DIR       alignment: graf1.png, graf3.png with H1to3p.xml, box.png, box_in_scene.png
  --regions DIR      where the mark is: photographs and regions.json, as ml/train/scenes.py writes them
  --json             the shipped pipeline's figures as JSON, and nothing else`;

async function main(): Promise<void> {
  const { values: options } = parseArgs({
    options: {
      references: { type: "string" },
      queries: { type: "string" },
      absent: { type: "string" },
      glyphs: { type: "string" },
      planar: { type: "string" },
      regions: { type: "string" },
      turns: { type: "string" },
      multi: { type: "boolean", default: false },
      reliability: { type: "string" },
      features: { type: "string" },
      sizes: { type: "string" },
      "baseline-onnx": { type: "string" },
      "no-rerank": { type: "boolean", default: false },
      twins: { type: "string" },
      verify: { type: "boolean", default: false },
      baselines: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
  });
  if (options.help) return console.log(USAGE);
  if (options.planar) return planar(options.planar, options.json);
  if (options.regions) return regions(options.regions, options.baselines, options.json);
  const sizes = readSizes(options.sizes);
  const facts = await modelFacts();
  const turns = readTurns(options.turns, facts.queryTurns);
  const own = shipped(facts.id, turns, await calibrationOf(facts.id), !options["no-rerank"]);
  const methods = options.baselines && !options.json ? [own, ...(await baselines(turns))] : [own];
  const elsewhere = options["baseline-onnx"];
  if (elsewhere && !options.json) methods.push(await fromElsewhere(elsewhere, turns));
  if (options.glyphs) return glyphs(methods, options.glyphs, options.json);
  if (options.twins) return twins(methods, options.twins, options.json);
  if (!options.references || !options.queries)
    throw new Error(`--references and --queries: must both be given, or --glyphs.\n\n${USAGE}`);
  const references = await readClasses(options.references, "--references");
  const photographs = await readClasses(options.queries, "--queries");
  refuseUnknownClasses(photographs, references);
  const asked = options.multi ? together : oneByOne;
  const queries = asked(photographs);
  const absent = asked(options.absent ? await readAbsent(options.absent, "--absent") : []);
  const rows: { name: string; figures: Figures }[] = [];
  for (const method of methods) {
    const features = method === own && options.features ? writeTo(options.features, sizes) : null;
    const { calibrated, ...figures } = await measure(
      method,
      references,
      queries,
      absent,
      report,
      features ? { features } : {},
    );
    rows.push({ name: method.name, figures });
    if (method === own && options.reliability)
      await writeReliability(options.reliability, figures, calibrated);
  }
  if (options.verify && !options.json) {
    const { createRerank } = await import("./verified.ts");
    const rerank = await createRerank(references);
    const { calibrated: _, ...figures } = await measure(own, references, queries, absent, report, { rerank });
    rows.push({ name: "the same, and aligned", figures });
  }
  console.log(options.json ? JSON.stringify(rows[0]?.figures) : retrievalTable(rows));
}

async function glyphs(methods: readonly Method[], path: string, json: boolean): Promise<void> {
  const { measureGlyphs } = await import("./glyphs.ts");
  const rows = [];
  for (const method of methods)
    rows.push({ name: method.name, figures: await measureGlyphs(method, path, report) });
  console.log(json ? JSON.stringify(rows[0]?.figures) : glyphTable(rows));
}

async function twins(methods: readonly Method[], folder: string, json: boolean): Promise<void> {
  const { measureTwins } = await import("./twins.ts");
  const rows = [];
  for (const method of methods)
    rows.push({ name: method.name, figures: await measureTwins(method, folder, report) });
  console.log(json ? JSON.stringify(rows[0]?.figures) : twinTable(rows));
}

async function planar(folder: string, json: boolean): Promise<void> {
  const { measurePlanar } = await import("./planar.ts");
  const figures = await measurePlanar(folder);
  console.log(json ? JSON.stringify(figures) : planarTable(figures));
}

async function regions(folder: string, baselines: boolean, json: boolean): Promise<void> {
  const { findByNetwork, measureRegions } = await import("./regions.ts");
  const { regionsFacts } = await import("../propose.ts");
  const { id } = await regionsFacts();
  const rows = [{ name: id, figures: await measureRegions(folder, id, findByNetwork, report) }];
  if (baselines && !json) {
    const { contrastBlob } = await import("./contrast-blob.ts");
    const name = "largest blob of contrast";
    const find = async (path: string) => [{ box: await contrastBlob(path), confidence: null }];
    rows.push({ name, figures: await measureRegions(folder, name, find, report) });
  }
  console.log(json ? JSON.stringify(rows[0]?.figures) : regionsTable(rows));
}

// Loaded only when asked for: the baselines need packages that running the reference does not.
async function baselines(turns: number): Promise<Method[]> {
  const { describeGradients, GRADIENTS_SIDE } = await import("./gradients.ts");
  const { hashPicture, HASH_SIDE } = await import("./perceptual-hash.ts");
  return [
    baseline("oriented gradients", turns, GRADIENTS_SIDE, describeGradients),
    baseline("perceptual hash", turns, HASH_SIDE, hashPicture),
  ];
}

async function fromElsewhere(path: string, turns: number): Promise<Method> {
  const { ONNX_SIDE, openOnnxBaseline } = await import("./onnx-baseline.ts");
  return baseline(basename(path), turns, ONNX_SIDE, await openOnnxBaseline(path));
}

function readTurns(asked: string | undefined, usual: number): number {
  if (asked === undefined) return usual;
  const turns = Number(asked);
  if (!Number.isInteger(turns) || turns < 1 || turns > 360)
    throw new Error(`--turns: must be a whole number from 1 to 360. Received ${asked}.`);
  return turns;
}

function readSizes(asked: string | undefined): readonly number[] {
  if (asked === undefined) return [];
  return asked.split(",").map((text) => {
    const size = Number(text);
    if (!Number.isInteger(size) || size < 2)
      throw new Error(`--sizes: must be whole numbers above 1, with commas. Received ${asked}.`);
    return size;
  });
}

/** @throws Error when the model is not calibrated: there is nothing to write then */
async function writeReliability(
  path: string,
  figures: Figures,
  calibrated: Calibrated | null,
): Promise<void> {
  if (!calibrated)
    throw new Error("--reliability: the model must be calibrated (ml/model/calibration.json).");
  await writeFile(path, `${JSON.stringify({ ...figures, ...calibrated }, null, 2)}\n`);
}

const writeTo = (path: string, sizes: readonly number[]) => (known: readonly Known[]) =>
  featureFile(path, known, sizes);

let lastReport = 0;

const report: Progress = (what, done, of) => {
  const now = performance.now();
  if (done < of && now - lastReport < 2000) return;
  lastReport = now;
  process.stderr.write(`${what} ${done} of ${of}\n`);
};

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
