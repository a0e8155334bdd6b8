import type { Dirent } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";

/** One photograph and the class its folder names. */
export type Sample = { readonly label: string; readonly path: string };

/**
 * The photographs of a folder of folders, `<class>/<image>`, in the order of their names.
 * @param option the command-line option that names the folder, for errors
 * @throws Error when the folder is missing or has no photograph in it
 */
export async function readClasses(folder: string, option: string): Promise<Sample[]> {
  const samples: Sample[] = [];
  for (const entry of await list(folder, option)) {
    if (!entry.isDirectory()) continue;
    const inside = join(folder, entry.name);
    for (const file of await list(inside, option))
      if (file.isFile()) samples.push({ label: entry.name, path: join(inside, file.name) });
  }
  if (samples.length === 0)
    throw new Error(
      `${option}: must hold folders of photographs, <class>/<image>. Received ${folder}, none in it.`,
    );
  return samples;
}

/** Photographs of marks that no reference shows: in folders, as above, or lying in the folder itself. */
export async function readAbsent(folder: string, option: string): Promise<Sample[]> {
  const entries = await list(folder, option);
  const loose = entries.filter((e) => e.isFile()).map((e) => ({ label: "", path: join(folder, e.name) }));
  return loose.length > 0 ? loose : readClasses(folder, option);
}

/** @throws Error naming the classes of the queries that no reference has */
export function refuseUnknownClasses(queries: readonly Sample[], references: readonly Sample[]): void {
  const known = new Set(references.map((r) => r.label));
  const unknown = [...new Set(queries.map((q) => q.label))].filter((label) => !known.has(label));
  if (unknown.length === 0) return;
  const some = unknown.slice(0, 5).join(", ") + (unknown.length > 5 ? ", ..." : "");
  throw new Error(
    `--queries: every class must have a reference (marks without one belong into --absent). ` +
      `Received ${unknown.length} without: ${some}.`,
  );
}

async function list(folder: string, option: string): Promise<Dirent[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch((cause: unknown) => {
    throw new Error(`${option}: must be a readable folder. Received ${folder}.`, { cause });
  });
  return entries.filter((e) => !e.name.startsWith(".")).sort((a, b) => (a.name < b.name ? -1 : 1));
}
