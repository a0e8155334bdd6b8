import { holderOf } from "#adapters/data-folder-lock";
import type { DescribedModel } from "#usecases/describe-models";
import { readEnvironment } from "#web/environment";
import { readFromHost } from "./ask-host.ts";
import { checkDatabase } from "./doctor/database.ts";
import { type Finding, finding, tryTo } from "./doctor/finding.ts";
import { checkDisk, checkLibraries, checkModel, checkNode } from "./doctor/machine.ts";
import { describeModelsInWords } from "./doctor/models.ts";

/**
 * Says, one line each, whether what a host needs is there and whole. Ends with status 1 when something is not.
 */
const environment = readEnvironment();
const findings: Finding[] = [];
const tell = (found: Finding) => {
  findings.push(found);
  console.log(`${found.ok ? "ok  " : "FAIL"}  ${found.what.padEnd(18)} ${found.words}`);
};

tell(checkNode());
for (const found of await checkLibraries()) tell(found);
tell(await checkModel());
tell(await checkDisk(environment.dataFolder));
const holder = environment.databaseUrl === null ? holderOf(environment.dataFolder) : null;
if (holder) {
  const words = `held by process ${holder.pid} since ${holder.since}; stop it to have the database and images checked`;
  tell(finding("database", true, words));
  tell(
    await tryTo("models", async () =>
      describeModelsInWords(await readFromHost<DescribedModel[]>(holder, "/api/models")),
    ),
  );
} else for (const found of await checkDatabase(environment)) tell(found);
process.exitCode = findings.every((found) => found.ok) ? 0 : 1;
