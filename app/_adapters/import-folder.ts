import { readFile, realpath } from "node:fs/promises";
import { join, relative } from "node:path";
import { CsvError, parse } from "csv-parse/sync";
import { received } from "#core/field-error";
import type { Columns } from "#core/import/columns";
import {
  type FolderError,
  type FolderRecord,
  IMPORT_FILES,
  type ImportFile,
} from "#core/import/folder-record";
import type { ImportFolder } from "../_usecases/ports.ts";

/**
 * A folder of references on disk: `makers`, `entries` and `photographs`, each as .csv or .jsonl (JSON Lines),
 * with the photographs beside them.
 */
export async function openImportFolder(folder: string): Promise<ImportFolder> {
  const root = await realpath(folder);
  const records: Record<ImportFile, readonly FolderRecord[]> = { makers: [], entries: [], photographs: [] };
  const errors: FolderError[] = [];
  let found = 0;
  for (const name of IMPORT_FILES) {
    const read = await readRecords(root, name);
    if (!read) continue;
    found++;
    records[name] = read.records;
    errors.push(...read.errors);
  }
  if (found === 0)
    errors.push({
      file: folder,
      line: 0,
      field: "folder",
      rule: "folder-files",
      received: received(folder),
      params: { allowed: IMPORT_FILES.map((n) => `${n}.csv or ${n}.jsonl`).join(", ") },
    });
  return {
    ...records,
    errors,
    async photograph(file) {
      try {
        const path = await realpath(join(root, file));
        return relative(root, path).startsWith("..") ? null : await readFile(path);
      } catch (error) {
        const code = (error as NodeJS.ErrnoException).code;
        if (code === "ENOENT" || code === "EISDIR" || code === "ENOTDIR") return null;
        throw error;
      }
    },
  };
}

type Read = { readonly records: FolderRecord[]; readonly errors: FolderError[] };

async function readRecords(root: string, name: ImportFile): Promise<Read | null> {
  for (const [ending, parseText] of [
    ["csv", parseCsv],
    ["jsonl", parseJsonLines],
  ] as const) {
    const file = `${name}.${ending}`;
    try {
      return parseText(file, await readFile(join(root, file), "utf8"));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
    }
  }
  return null;
}

function parseCsv(file: string, text: string): Read {
  try {
    const rows = parse(text, {
      bom: true,
      columns: true,
      info: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as {
      record: Columns;
      info: { lines: number };
    }[];
    return {
      records: rows.map(({ record, info }) => ({ file, line: info.lines, columns: record })),
      errors: [],
    };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === "number" ? error.lines : 0;
    const broken = { file, line, field: "line", rule: "csv", received: received(error.message) };
    return { records: [], errors: [broken] };
  }
}

function parseJsonLines(file: string, text: string): Read {
  const read: Read = { records: [], errors: [] };
  for (const [index, line] of text.split("\n").entries()) {
    if (line.trim() === "") continue;
    const at = { file, line: index + 1 };
    const columns = readObject(line);
    if (columns) read.records.push({ ...at, columns });
    else read.errors.push({ ...at, field: "line", rule: "json-line", received: received(line) });
  }
  return read;
}

/** An object whose values are texts or numbers, as columns; anything else is not a record. */
function readObject(line: string): Columns | null {
  try {
    const value: unknown = JSON.parse(line);
    if (typeof value !== "object" || value === null || Array.isArray(value)) return null;
    const entries = Object.entries(value);
    if (!entries.every(([, v]) => typeof v === "string" || typeof v === "number")) return null;
    return Object.fromEntries(entries.map(([k, v]) => [k, String(v)]));
  } catch {
    return null;
  }
}
