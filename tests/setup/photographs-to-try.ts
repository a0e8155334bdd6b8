import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";

const folder = fileURLToPath(new URL("../../seed/demo/try", import.meta.url));

/** A photograph of the demo to look up, and the entry it shows; null when no entry has that mark. */
export type PhotographToTry = {
  readonly path: string;
  readonly title: string;
  readonly entry: string | null;
};

/** All of them, in the order of their list. */
export function photographsToTry(): readonly PhotographToTry[] {
  const rows: Readonly<Record<"file" | "title" | "entry", string>>[] = parse(
    readFileSync(join(folder, "try.csv"), "utf8"),
    { columns: true, bom: true },
  );
  return rows.map(({ file, title, entry }) => ({ path: join(folder, file), title, entry: entry || null }));
}
