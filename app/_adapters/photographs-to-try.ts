import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import sharp from "sharp";
import type { PhotographToTry } from "#core/look-ups/photograph-to-try";

type Row = { file: string; title: string; entry: string; note: string };

const read = new Map<string, Promise<ReadonlyMap<string, PhotographToTry & { file: string }>>>();

/** The demo's photographs to try, by name; read once. */
export function readPhotographsToTry(
  demoFolder: string,
): Promise<ReadonlyMap<string, PhotographToTry & { file: string }>> {
  const known = read.get(demoFolder) ?? list(join(/* turbopackIgnore: true */ demoFolder, "try"));
  read.set(demoFolder, known);
  return known;
}

async function list(folder: string) {
  const rows = parse<Row>(await readFile(join(/* turbopackIgnore: true */ folder, "try.csv"), "utf8"), {
    columns: true,
    bom: true,
  });
  const all = await Promise.all(
    rows.map(async ({ file, title }) => {
      const path = join(/* turbopackIgnore: true */ folder, file);
      const { width, height } = await sharp(path).metadata();
      const name = file.replace(/^.*\//, "").replace(/\.\w+$/, "");
      return [name, { name, title, width, height, file: path }] as const;
    }),
  );
  return new Map(all);
}
