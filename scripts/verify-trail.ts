import { parseArgs } from "node:util";
import { hashOfValue } from "#adapters/canonical-json";
import { type Holder, holderOf } from "#adapters/data-folder-lock";
import { openDatabase } from "#adapters/database";
import { createTrails } from "#adapters/trails-store";
import { type TrailFault, type Verified, verifyTrails } from "#usecases/verify-trails";
import { readEnvironment } from "#web/environment";
import { askHost } from "./ask-host.ts";

/**
 * Checks every trail: its chain of hashes, whether each event can have followed, and whether entries and revisions
 * still are what their trails say. Exits with 1 when anything is not.
 *
 *   npm run verify-trail [-- --entry SLUG]
 */
const { values } = parseArgs({ options: { entry: { type: "string" } } });
const entry = values.entry ?? null;

/** Faults that are told; where there are more, the first ones say enough. */
const TOLD = 20;

const environment = readEnvironment();
const holder = environment.databaseUrl === null ? holderOf(environment.dataFolder) : null;
report(holder ? await verifyThroughHost(holder) : await verifyHere());

/** Opens the database alone: nothing is brought in or settled before it is looked at. */
async function verifyHere(): Promise<Verified | null> {
  const { databaseUrl: url, dataFolder, prismaFolder } = environment;
  const database = await openDatabase({ url, dataFolder, prismaFolder });
  try {
    return await verifyTrails({ trails: createTrails(database), hash: hashOfValue }, entry);
  } finally {
    await database.close();
  }
}

async function verifyThroughHost(host: Holder): Promise<Verified | null> {
  process.stderr.write(`The host at ${host.address} holds the database and checks for us.\n`);
  type Line = { readonly result?: Verified | null };
  for await (const { result } of askHost<Line>(host, "/api/trails", { entry }))
    if (result !== undefined) return result;
  throw new Error(`The host at ${host.address} stopped before it answered.`);
}

function report(verified: Verified | null): void {
  if (verified === null) {
    console.error(`There is no entry ${entry}.`);
    process.exitCode = 2;
    return;
  }
  const { trails, links, faults } = verified;
  console.log(`${trails} ${trails === 1 ? "trail" : "trails"}, ${links} links`);
  for (const fault of faults.slice(0, TOLD)) console.error(tell(fault));
  if (faults.length > TOLD) console.error(`... and ${faults.length - TOLD} more.`);
  if (faults.length === 0) console.log("Every link is whole, and everything is what its trail says.");
  else process.exitCode = 1;
}

function tell({ trail, broken, differs }: TrailFault): string {
  return broken
    ? `${trail}: first broken link ${broken.number}: ${broken.why}`
    : `${trail}: ${differs.join("; ")}`;
}
