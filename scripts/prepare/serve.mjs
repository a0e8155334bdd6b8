import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { build, buildIsNeeded, generateClient, nextProgram, tsx } from "./build.mjs";
import { installWhenNeeded } from "./install.mjs";
import { choosePort } from "./port.mjs";
import { step } from "./report.mjs";
import { CommandFailed, endChildren, Refused, root, run, show, stopChildrenWhenAsked } from "./run.mjs";

let stopping = false;

/** Makes everything ready that is not, serves the app on 127.0.0.1, and stays until it is told to stop. */
export async function serve() {
  stopChildrenWhenAsked(() => {
    stopping = true;
  });
  try {
    process.exitCode = await prepareAndServe();
  } catch (error) {
    if (stopping) {
      process.exitCode = 130;
      return;
    }
    endChildren("SIGTERM");
    console.error(error instanceof CommandFailed || error instanceof Refused ? `\n${error.message}` : error);
    process.exitCode = 1;
  }
}

async function prepareAndServe() {
  const embedded = !process.env.DATABASE_URL;
  if (embedded) process.env.COUNTERMARK_DEMO ??= "1";
  console.log("Countermark");
  await installWhenNeeded();
  if (embedded) await refuseWhenTaken(resolve(root, process.env.COUNTERMARK_DATA ?? "data"));
  await generateClient();
  const port = await choosePort(process.env.PORT);
  // The build keeps one core busy most of the time and the database the other: side by side they take less.
  await Promise.all([buildIsNeeded() ? build() : undefined, prepareDatabase()]);
  return await serveOn(port);
}

/** A data folder that another process has open must not be built under its feet: its holder is named instead. */
async function refuseWhenTaken(folder) {
  if (!existsSync(join(folder, "lock.json"))) return;
  let holder = "";
  await run(process.execPath, tsx("scripts/refuse-taken-folder.ts", folder), {
    onLine: (line) => {
      holder += line;
    },
  });
  if (holder) throw new Refused(holder);
}

async function prepareDatabase() {
  await step("preparing the database", (note) =>
    run(process.execPath, tsx("scripts/prepare-database.ts"), { onLine: (line) => line && note(line) }),
  );
}

async function serveOn(port) {
  const address = `http://127.0.0.1:${port}`;
  const ended = show(
    process.execPath,
    [nextProgram(), "start", "--hostname", "127.0.0.1", "--port", String(port)],
    {
      NEXT_TELEMETRY_DISABLED: "1",
      PORT: String(port),
    },
  );
  await Promise.race([ended, answers(address)]);
  if (!stopping) console.log(`\n  Countermark is open at ${address}/  (Ctrl-C ends it)\n`);
  const status = await ended;
  return stopping ? 0 : status;
}

/** Waits until the app answers. */
async function answers(address) {
  for (;;) {
    try {
      await fetch(address, { redirect: "manual" });
      return;
    } catch {
      await new Promise((done) => setTimeout(done, 150));
    }
  }
}
