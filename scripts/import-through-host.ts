import { resolve } from "node:path";
import type { Holder } from "#adapters/data-folder-lock";
import type { FolderError } from "#core/import/folder-record";
import type { Result } from "#core/result";
import type { ImportOutcome, ImportProgress } from "#usecases/import-references";
import { askHost } from "./ask-host.ts";

type Line = {
  readonly progress?: ImportProgress;
  readonly result?: Result<ImportOutcome, readonly FolderError[]>;
};

/** Asks the running host, which holds the embedded database, to import a folder of this machine. */
export async function importThroughHost(
  holder: Holder,
  folder: string,
  options: {
    readonly dryRun: boolean;
    readonly by: string;
    readonly onProgress: (progress: ImportProgress) => void;
  },
): Promise<Result<ImportOutcome, readonly FolderError[]>> {
  process.stderr.write(`The host at ${holder.address} holds the database and imports for us.\n`);
  const question = { folder: resolve(folder), dryRun: options.dryRun, by: options.by };
  for await (const { progress, result } of askHost<Line>(holder, "/api/import", question)) {
    if (progress) options.onProgress(progress);
    if (result) return result;
  }
  throw new Error(`The host at ${holder.address} stopped before it answered.`);
}
