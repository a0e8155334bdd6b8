import { parseArgs } from "node:util";
import { holderOf } from "#adapters/data-folder-lock";
import { appointByHost } from "#usecases/appoint-by-host";
import { readEnvironment } from "#web/environment";
import { connect } from "#web/live";
import { sendToHost } from "./ask-host.ts";
import { sentence } from "./error-sentences.ts";

const USAGE = "Usage: npm run appoint -- --email NAME@EXAMPLE.ORG --role administrator|moderator";

const { values } = parseArgs({ options: { email: { type: "string" }, role: { type: "string" } } });
const { email, role } = values;
if (email === undefined || role === undefined) {
  console.log(USAGE);
  process.exit(2);
}

const asked = { email, role };
const environment = readEnvironment();
const holder = environment.databaseUrl === null ? holderOf(environment.dataFolder) : null;
type Appointed = Awaited<ReturnType<typeof appointByHost>>;
const result = holder ? await sendToHost<Appointed>(holder, "/api/appoint", asked) : await appointHere();
if (result.ok) {
  const { name, changed } = result.value;
  console.log(changed ? `${name} is ${role} now.` : `${name} was ${role} already; nothing changed.`);
} else {
  console.error(sentence(result.error));
  process.exitCode = 1;
}

async function appointHere(): Promise<Appointed> {
  const wired = await connect(environment);
  try {
    return await appointByHost(wired, asked);
  } finally {
    await wired.database.close();
  }
}
