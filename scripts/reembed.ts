import { parseArgs } from "node:util";
import { type Holder, holderOf } from "#adapters/data-folder-lock";
import { type Reembedded, reembed } from "#usecases/reembed";
import { removeOldVectors } from "#usecases/remove-old-vectors";
import { readEnvironment } from "#web/environment";
import { connect } from "#web/live";
import { askHost } from "./ask-host.ts";

/**
 * Embeds every photograph with the model in place and lets it answer: what a host does by itself when it starts with
 * a new model, at once and with the progress shown. Ctrl+C stops it; the next time it goes on where it was.
 *
 *   npm run reembed -- [--leave-out] [--remove-old]
 *
 * --leave-out lets the new model answer although some photographs can't be embedded; --remove-old removes the vectors
 * and the kept files of retired models now, and not only after their time.
 */
const { values } = parseArgs({
  options: {
    "leave-out": { type: "boolean", default: false },
    "remove-old": { type: "boolean", default: false },
  },
});
const options = { leaveOut: values["leave-out"], removeOld: values["remove-old"] };

type Outcome = Reembedded & { readonly removed: readonly string[] };
type Progress = { readonly model: string; readonly done: number; readonly of: number };

const environment = readEnvironment();
const holder = environment.databaseUrl === null ? holderOf(environment.dataFolder) : null;
report(holder ? await reembedThroughHost(holder) : await reembedHere());

async function reembedHere(): Promise<Outcome> {
  const wired = await connect(environment);
  const stop = new AbortController();
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop.abort());
  try {
    const outcome = await reembed(wired, {
      leaveOut: options.leaveOut,
      signal: stop.signal,
      onProgress: show,
    });
    const removed = options.removeOld && !outcome.stopped ? await removeOldVectors(wired, 0) : [];
    return { ...outcome, removed };
  } finally {
    await wired.database.close();
  }
}

async function reembedThroughHost(host: Holder): Promise<Outcome> {
  process.stderr.write(`The host at ${host.address} holds the database and re-embeds for us.\n`);
  type Line = { readonly progress?: Progress; readonly result?: Outcome };
  for await (const { progress, result } of askHost<Line>(host, "/api/models", options)) {
    if (progress) show(progress);
    if (result) return result;
  }
  throw new Error(`The host at ${host.address} stopped before it answered.`);
}

function show({ model, done, of }: Progress): void {
  const share = of === 0 ? 100 : Math.floor((100 * done) / of);
  process.stderr.write(`\r${model}: ${done} of ${of} photographs, ${share}%`);
}

function report(outcome: Outcome): void {
  const { model, done, of, failed, failures, answers, stopped, removed } = outcome;
  process.stderr.write("\n");
  for (const { sha256, why } of failed) console.error(`image ${sha256}: ${why}`);
  for (const old of removed) console.log(`${old}: its vectors and kept files were removed.`);
  if (stopped)
    console.log(`${model}: stopped at ${done} of ${of} photographs; npm run reembed goes on from there.`);
  else if (answers) console.log(`${model} answers, for ${done} of ${of} photographs.`);
  else
    console.log(
      `${model} does not answer yet: ${failures} photographs can't be embedded. --leave-out goes without them.`,
    );
  if (stopped || !answers || failures > 0) process.exitCode = 1;
}
