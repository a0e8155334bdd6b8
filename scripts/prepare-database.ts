import { openImportFolder } from "#adapters/import-folder";
import { DEFAULT_POLICY } from "#core/review/policy";
import { importReferences } from "#usecases/import-references";
import { readEnvironment } from "#web/environment";
import { connect, type Live } from "#web/live";
import { readDemoStories, submittedAt, tellDemoHistories } from "./demo-histories.ts";
import { takeDemoMembersIn } from "./demo-members.ts";
import { keepDemoObjectFiles } from "./demo-object-files.ts";
import { askDemoQuestions } from "./demo-questions.ts";
import { sentence } from "./error-sentences.ts";

/**
 * Brings the database to where a host can be started on it: made when it is new, every migration applied, and the
 * demo taken in when COUNTERMARK_DEMO is 1 and nothing is in it yet. Prints a line for each step it is at.
 */
const environment = readEnvironment();
console.log("opening");
const wired = await connect(environment);
try {
  for (const name of wired.database.migrated) console.log(`migrated ${name}`);
  const { entries } = await wired.entries.counts();
  if (environment.demoFolder !== null && (entries === 0 || (await holdsDemo(wired))))
    await takeDemoIn(wired, environment.demoFolder, entries === 0);
  const counts = await wired.entries.counts();
  console.log(`${counts.entries} entries, ${counts.photographs} photographs, ${counts.makers} makers`);
} finally {
  await wired.database.close();
}

/** The demo's members, who need no password, belong where the demo is, whatever the setting says. */
async function holdsDemo({ makers }: Live): Promise<boolean> {
  return (await makers.bySlug("tobias-bodkin")) !== null;
}

async function takeDemoIn(wired: Live, folder: string, isEmpty: boolean): Promise<void> {
  console.log(`members of the demo: ${await takeDemoMembersIn(wired)}`);
  const stories = await readDemoStories(wired, folder);
  if (isEmpty) await takeFolderIn(wired, folder, submittedAt(stories, wired.clock.now()));
  console.log(`histories: ${await tellDemoHistories(wired, stories)}`);
  console.log(`object files: ${await keepDemoObjectFiles(wired, folder)}`);
}

async function takeFolderIn(wired: Live, folder: string, times: ReadonlyMap<string, string>): Promise<void> {
  // What is told of the past went by the usual rules, whatever a host shortens to try them.
  const result = await importReferences(
    { ...wired, policy: DEFAULT_POLICY },
    await openImportFolder(folder),
    {
      dryRun: false,
      by: "demo",
      times,
      onProgress: ({ done, of }) => {
        if (done % 20 === 0 || done === of) console.log(`taking the demo in: photograph ${done} of ${of}`);
      },
    },
  );
  if (result.ok) {
    console.log(`open questions: ${await askDemoQuestions(wired, folder)}`);
    return;
  }
  const sentences = result.error.map((error) => `${error.file}:${error.line}: ${sentence(error)}`);
  throw new Error(`The demo can't be taken in:\n${sentences.slice(0, 20).join("\n")}`);
}
