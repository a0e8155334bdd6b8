import { parseArgs } from "node:util";
import { holderOf } from "#adapters/data-folder-lock";
import { openImportFolder } from "#adapters/import-folder";
import type { FolderError } from "#core/import/folder-record";
import { type ImportOutcome, importReferences } from "#usecases/import-references";
import { readEnvironment } from "#web/environment";
import { connect } from "#web/live";
import { sentence } from "./error-sentences.ts";
import { importThroughHost } from "./import-through-host.ts";

const USAGE = "Usage: npm run import -- FOLDER [--dry-run] [--by NAME]";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { "dry-run": { type: "boolean", default: false }, by: { type: "string", default: "import" } },
});
const [folder] = positionals;
if (folder === undefined || positionals.length > 1) {
  console.log(USAGE);
  process.exit(2);
}

const options = { dryRun: values["dry-run"], by: values.by, onProgress: showProgress() };
const environment = readEnvironment();
const holder = environment.databaseUrl === null ? holderOf(environment.dataFolder) : null;
const result = holder ? await importThroughHost(holder, folder, options) : await importHere();
if (result.ok) report(result.value);
else refuse(result.error);

async function importHere() {
  const wired = await connect(environment);
  try {
    return await importReferences(wired, await openImportFolder(folder ?? ""), options);
  } finally {
    await wired.database.close();
  }
}

function showProgress() {
  const begun = performance.now();
  let told = 0;
  return ({ done, of }: { done: number; of: number }) => {
    const now = performance.now();
    if (done < of && now - told < 500) return;
    told = now;
    const rate = (done / (now - begun)) * 1000;
    process.stderr.write(
      `\rphotographs ${done} of ${of}, ${rate.toFixed(0)} a second${done === of ? "\n" : ""}`,
    );
  };
}

function report({ dryRun, found, recorded }: ImportOutcome): void {
  console.log(
    `Found: ${found.makers} makers, ${found.entries} entries, ${found.photographs} photographs. No errors.`,
  );
  if (dryRun) console.log("A dry run: nothing was recorded.");
  else
    console.log(
      `Recorded: ${recorded.makers} makers and ${recorded.entries} entries new or changed, ${recorded.revisions} revisions, ${recorded.photographs} photographs.`,
    );
}

function refuse(errors: readonly FolderError[]): void {
  for (const error of errors.slice(0, 200)) console.error(`${error.file}:${error.line}: ${sentence(error)}`);
  if (errors.length > 200) console.error(`... and ${errors.length - 200} more.`);
  console.error(`${errors.length} errors; nothing was recorded.`);
  process.exitCode = 1;
}
