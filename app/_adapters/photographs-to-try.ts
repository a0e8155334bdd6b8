import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import type { PhotographToTry } from "#core/look-ups/photograph-to-try";
import { describeImage } from "./reduce-image.ts";

/** The demo's photographs to try; none where there is no demo. */
export type PhotographsToTry = {
  all(): Promise<readonly PhotographToTry[]>;
  /** The image of one by its name; null when there is none of that name. */
  bytes(name: string): Promise<Uint8Array | null>;
};

type Row = { readonly file: string; readonly title: string };
type Known = { readonly photograph: PhotographToTry; readonly path: string };

/** Reads the list once, the images as they are asked for. */
export function createPhotographsToTry(demoFolder: string | null): PhotographsToTry {
  let read: Promise<ReadonlyMap<string, Known>> | undefined;
  const known = () => {
    read ??=
      demoFolder === null
        ? Promise.resolve(new Map())
        : list(join(/* turbopackIgnore: true */ demoFolder, "try"));
    return read;
  };
  return {
    all: async () => [...(await known()).values()].map(({ photograph }) => photograph),
    async bytes(name) {
      const found = (await known()).get(name);
      return found ? readFile(/* turbopackIgnore: true */ found.path) : null;
    },
  };
}

async function list(folder: string): Promise<ReadonlyMap<string, Known>> {
  const text = await readFile(join(/* turbopackIgnore: true */ folder, "try.csv"), "utf8");
  const rows = parse<Row>(text, { columns: true, bom: true });
  const all = await Promise.all(
    rows.map(async ({ file, title }) => {
      const path = join(/* turbopackIgnore: true */ folder, file);
      const { width, height } = await describeImage(await readFile(/* turbopackIgnore: true */ path));
      const name = file.replace(/^.*\//, "").replace(/\.\w+$/, "");
      return [name, { photograph: { name, title, width, height }, path }] as const;
    }),
  );
  return new Map(all);
}
