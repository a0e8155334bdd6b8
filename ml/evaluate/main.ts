import { parseArgs } from "node:util";
import { modelFacts } from "../embed.ts";
import { readAbsent, readClasses, refuseUnknownClasses } from "./folders.ts";
import { type Figures, measure, type Progress } from "./measure.ts";
import { baseline, type Method, shipped } from "./method.ts";
import { glyphTable, planarTable, regionsTable, retrievalTable } from "./table.ts";

const USAGE = `How well the shipped pipeline finds marks, over any photographs.

  npm run evaluate -- --references DIR --queries DIR [--absent DIR] [--baselines] [--verify] [--turns N] [--json]
  npm run evaluate -- --glyphs ZIP [--baselines] [--turns N] [--json]
  npm run evaluate -- --planar DIR [--json]
  npm run evaluate -- --regions DIR [--baselines] [--json]

  --references DIR   photographs to find, as <class>/<image>
  --queries DIR      photographs to find them by, as <class>/<image>, of the same classes
  --absent DIR       photographs of marks that no reference shows
  --baselines        also a histogram of oriented gradients and a 64-bit perceptual hash
  --verify           also the best 50 re-ranked by how well they can be laid over the query
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
      verify: { type: "boolean", default: false },
      baselines: { type: "boolean", default: false },
      json: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
  });
  if (options.help) return console.log(USAGE);
  if (options.planar) return planar(options.planar, options.json);
  if (options.regions) return regions(options.regions, options.baselines, options.json);
  const facts = await modelFacts();
  const turns = readTurns(options.turns, facts.queryTurns);
  const own = shipped(facts.id, turns);
  const methods = options.baselines && !options.json ? [own, ...(await baselines(turns))] : [own];
  if (options.glyphs) return glyphs(methods, options.glyphs, options.json);
  if (!options.references || !options.queries)
    throw new Error(`--references and --queries: must both be given, or --glyphs.\n\n${USAGE}`);
  const references = await readClasses(options.references, "--references");
  const queries = await readClasses(options.queries, "--queries");
  const absent = options.absent ? await readAbsent(options.absent, "--absent") : [];
  refuseUnknownClasses(queries, references);
  const rows: { name: string; figures: Figures }[] = [];
  for (const method of methods)
    rows.push({ name: method.name, figures: await measure(method, references, queries, absent, report) });
  if (options.verify && !options.json) {
    const { createRerank } = await import("./verified.ts");
    const rerank = await createRerank(references);
    const figures = await measure(own, references, queries, absent, report, rerank);
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

function readTurns(asked: string | undefined, usual: number): number {
  if (asked === undefined) return usual;
  const turns = Number(asked);
  if (!Number.isInteger(turns) || turns < 1 || turns > 360)
    throw new Error(`--turns: must be a whole number from 1 to 360. Received ${asked}.`);
  return turns;
}

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
