import { resolve } from "node:path";
import type { Holder } from "#adapters/data-folder-lock";
import type { FolderError } from "#core/import/folder-record";
import type { Result } from "#core/result";
import type { ImportOutcome, ImportProgress } from "#usecases/import-references";

type Line = {
  readonly progress?: ImportProgress;
  readonly result?: Result<ImportOutcome, readonly FolderError[]>;
  readonly error?: { readonly received: string };
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
  if (holder.address === null)
    throw new Error(
      `Process ${holder.pid} holds the data folder and answers nowhere yet. Try again in a moment.`,
    );
  process.stderr.write(`The host at ${holder.address} holds the database and imports for us.\n`);
  const response = await fetch(new URL("/api/import", holder.address), {
    method: "POST",
    headers: { authorization: `Bearer ${holder.key}`, "content-type": "application/json" },
    body: JSON.stringify({ folder: resolve(folder), dryRun: options.dryRun, by: options.by }),
  });
  if (!response.ok || !response.body)
    throw new Error(`The host at ${holder.address} answered ${response.status}: ${await response.text()}`);
  for await (const line of linesOf(response.body)) {
    const { progress, result, error } = JSON.parse(line) as Line;
    if (progress) options.onProgress(progress);
    if (error) throw new Error(`The host failed; its log has event ${error.received}.`);
    if (result) return result;
  }
  throw new Error(`The host at ${holder.address} stopped before it answered.`);
}

async function* linesOf(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest = "";
  for await (const chunk of body as unknown as AsyncIterable<Uint8Array>) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split("\n");
    rest = lines.pop() ?? "";
    yield* lines.filter((line) => line !== "");
  }
  if (rest !== "") yield rest;
}
