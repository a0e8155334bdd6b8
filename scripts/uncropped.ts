import { parseArgs } from "node:util";
import sharp from "sharp";
import { openImportFolder } from "#adapters/import-folder";
import { type PhotographRecord, photographFromColumns } from "#core/import/photograph-from-columns";
import { framed, isConfident, type Proposal } from "#core/photographs/proposal";
import { type Region, wholeOf, withMargin } from "#core/photographs/region";
import { embedQuery, embedReference, modelFacts } from "#ml/embed";
import { areaUnderRoc } from "#ml/evaluate/metrics";
import { overlap, uprightBox } from "#ml/overlap";
import { decode } from "#ml/preprocess";
import { proposeRegions } from "#ml/propose";

/**
 * How much is lost when a photograph is looked up as it was taken, without a frame round its mark, and how much of
 * that the proposed regions bring back. One in so many photographs of an import folder is looked up among all others.
 *
 *   npx tsx scripts/uncropped.ts [--folder seed/demo] [--every 6]
 */
const { values } = parseArgs({
  options: {
    folder: { type: "string", default: "seed/demo" },
    every: { type: "string", default: "6" },
  },
});
const every = Number(values.every);
if (!Number.isInteger(every) || every < 2)
  throw new Error(`--every: must be a whole number above 1. Received ${values.every}.`);

type Size = { readonly width: number; readonly height: number };
type Taken = { readonly bytes: Buffer; readonly size: Size; readonly region: Region; readonly entry: string };
type Reference = { readonly entry: string; readonly vector: Float32Array };

/** Where a query is cut: nowhere, where its record says, or where the mark is proposed to be. */
const WAYS: Readonly<Record<string, (taken: Taken, proposals: readonly Proposal[]) => readonly Region[]>> = {
  "whole photograph": ({ size }) => [wholeOf(size)],
  "framed by hand": ({ region }) => [region],
  "first proposal, if confident": ({ size }, [first]) =>
    first && isConfident(first) ? [framed(first.region, size)] : [wholeOf(size)],
  "first proposal": ({ size }, [first]) => [first ? framed(first.region, size) : wholeOf(size)],
  "first proposal and whole": ({ size }, [first]) => [
    wholeOf(size),
    ...(first ? [framed(first.region, size)] : []),
  ],
};

const folder = await openImportFolder(values.folder);
const records = folder.photographs.flatMap(({ columns }): PhotographRecord[] => {
  const read = photographFromColumns(columns);
  return read.ok ? [read.value] : [];
});

const references: Reference[] = [];
const queries: Taken[] = [];
for (const [i, record] of records.entries()) {
  const taken = await take(record);
  if (i % every === 0) queries.push(taken);
  else references.push({ entry: record.entry, vector: await reference(taken) });
  if (i % 100 === 99) process.stderr.write(`${i + 1} of ${records.length} photographs read\n`);
}

/** Best cosines of the right entry's references, and of all others', as if the right entry were not there. */
type Found = { readonly right: number; readonly other: number };
const found = new Map<string, Found[]>(Object.keys(WAYS).map((name) => [name, []]));
const overlaps: number[] = [];
let confident = 0;
const known = new Set(references.map(({ entry }) => entry));
for (const taken of queries.filter(({ entry }) => known.has(entry))) {
  const proposals = await proposeRegions(taken.bytes);
  const [first] = proposals;
  overlaps.push(first ? overlap(first.region, uprightBox(taken.region, taken.region.turn)) : 0);
  if (first && isConfident(first)) confident++;
  for (const [name, cut] of Object.entries(WAYS)) {
    found.get(name)?.push(await nearest(taken, cut(taken, proposals)));
  }
}

const share = (yes: readonly boolean[]) => yes.filter(Boolean).length / yes.length;
const { likeness } = await modelFacts();
console.log(
  `${overlaps.length} photographs looked up among ${references.length} others\n` +
    "right entry first | area under ROC, present against absent | absent, and none said to fit | present, and named",
);
for (const [name, each] of found) {
  const first = share(each.map(({ right, other }) => right > other));
  const there = each.map(({ right, other }) => Math.max(right, other));
  const gone = each.map(({ other }) => other);
  const below = share(gone.map((cosine) => cosine < likeness.noneBelow));
  const above = share(there.map((cosine) => cosine >= likeness.noneBelow));
  const columns = [first, areaUnderRoc(there, gone), below, above].map((value) => value.toFixed(3));
  console.log(`  ${columns.join("  ")}  ${name}`);
}
console.log(
  `first proposal: mean IoU ${(overlaps.reduce((a, b) => a + b, 0) / overlaps.length).toFixed(3)}, ` +
    `above 0.5 ${share(overlaps.map((v) => v > 0.5)).toFixed(3)}, confident in ${confident}`,
);

async function take({ file, entry, box, turn }: PhotographRecord): Promise<Taken> {
  const bytes = await folder.photograph(file);
  if (!bytes) throw new Error(`${file}: must be in ${values.folder}.`);
  const buffer = Buffer.from(bytes);
  const { autoOrient: size } = await sharp(buffer).metadata();
  return { bytes: buffer, size, region: box ? { ...box, turn } : { ...wholeOf(size), turn }, entry };
}

async function reference({ bytes, region, size }: Taken): Promise<Float32Array> {
  return (await embedReference(await decode(bytes, withMargin(region, size)))).vector;
}

/** The best cosine of the right entry's references and of all others', over all frames and all turns. */
async function nearest({ bytes, entry }: Taken, regions: readonly Region[]): Promise<Found> {
  let [right, other] = [-1, -1];
  for (const region of regions)
    for (const { vector } of await embedQuery(await decode(bytes, region)))
      for (const each of references) {
        const cosine = vector.reduce((sum, value, i) => sum + value * (each.vector[i] ?? 0), 0);
        if (each.entry === entry) right = Math.max(right, cosine);
        else other = Math.max(other, cosine);
      }
  return { right, other };
}
