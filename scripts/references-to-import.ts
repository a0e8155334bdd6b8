import { copyFile, mkdir, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { imagesOfClasses, keyOfClass } from "./folders/class-folders.ts";

/**
 * Turns a folder of references, `<class>/<image>`, into one that can be imported: an entry for each class, named
 * after it, with its images as photographs.
 *
 *   npx tsx scripts/references-to-import.ts --references DIR --to NEW_DIR --licence TEXT --credit TEXT [--material TEXT]
 */
const { values } = parseArgs({
  options: {
    references: { type: "string" },
    to: { type: "string" },
    licence: { type: "string" },
    credit: { type: "string" },
    material: { type: "string", default: "unknown" },
  },
});
const { references, to, licence, credit, material } = values;
if (!references || !to || !licence || !credit)
  throw new Error("--references, --to, --licence and --credit must all be given.");

await mkdir(to, { recursive: true });
if ((await readdir(to)).length > 0) throw new Error(`--to must name a new or empty folder. Received ${to}.`);

const images = await imagesOfClasses(references);
const classes = [...new Map(images.map((image) => [keyOfClass(image.class), image.class]))];
await writeFile(
  join(to, "entries.csv"),
  table(
    ["key", "title", "kind", "material"],
    classes.map(([key, name]) => [key, name, "mark", material]),
  ),
);
await writeFile(
  join(to, "photographs.csv"),
  table(
    ["file", "entry", "licence", "credit"],
    images.map((image) => [
      `${keyOfClass(image.class)}/${image.file}`,
      keyOfClass(image.class),
      licence,
      credit,
    ]),
  ),
);
for (const image of images) {
  const folder = join(to, keyOfClass(image.class));
  await mkdir(folder, { recursive: true });
  await copyFile(image.path, join(folder, image.file));
}
console.log(`${classes.length} entries, ${images.length} photographs: npm run import -- ${to}`);

/** Rows as CSV (RFC 4180). */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const quote = (value: string) => (/[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value);
  return [head, ...rows].map((row) => `${row.map(quote).join(",")}\r\n`).join("");
}
