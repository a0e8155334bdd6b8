import { writeFile } from "node:fs/promises";
import { parseArgs } from "node:util";
import sharp from "sharp";
import { openImportFolder } from "#adapters/import-folder";
import { photographFromColumns } from "#core/import/photograph-from-columns";
import { wholeOf, withMargin } from "#core/photographs/region";
import { modelFacts } from "#ml/embed";
import { decode, prepare } from "#ml/preprocess";

/**
 * Writes what the network sees of an import folder's photographs, as float32, one after the other: every second
 * photograph, upright and turned. ml/train/quantise.py reads the ranges of activations off them.
 *
 *   npx tsx scripts/prepared-patches.ts --out FILE [--folder seed/demo]
 */
const { values } = parseArgs({
  options: { folder: { type: "string", default: "seed/demo" }, out: { type: "string" } },
});
if (!values.out) throw new Error("--out: must name a file. Received nothing.");

const { side } = await modelFacts();
const folder = await openImportFolder(values.folder);
const pictures: Float32Array[] = [];
for (const [i, { columns }] of folder.photographs.entries()) {
  const record = photographFromColumns(columns);
  if (!record.ok || i % 2 === 1) continue;
  const { file, box, turn } = record.value;
  const bytes = await folder.photograph(file);
  if (!bytes) throw new Error(`${file}: must be in ${values.folder}.`);
  const { autoOrient: size } = await sharp(Buffer.from(bytes)).metadata();
  const region = box ? { ...box, turn } : { ...wholeOf(size), turn };
  const patch = await decode(Buffer.from(bytes), withMargin(region, size));
  pictures.push(prepare(patch, 0, side), prepare(patch, (i * 37) % 360, side));
}
await writeFile(values.out, Buffer.concat(pictures.map((each) => Buffer.from(each.buffer))));
console.log(`${values.out}: ${pictures.length} pictures`);
