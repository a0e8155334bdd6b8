import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe } from "vitest";
import { type Database, openDatabase } from "#adapters/database";
import { makeThrowAwayDatabase } from "../../scripts/throw-away-database.ts";

const prismaFolder = fileURLToPath(new URL("../../prisma", import.meta.url));

/**
 * Runs a group of tests twice, on an empty database of each kind with every migration applied: the embedded one,
 * in memory, and one of its own on the server that TEST_DATABASE_URL names. Without that address the second
 * counts as skipped.
 * @param tests is given a function that returns the open database, to be called inside tests and their hooks
 */
export function describeOnBothDatabases(title: string, tests: (database: () => Database) => void): void {
  const server = process.env.TEST_DATABASE_URL;
  describe(`${title}, embedded database`, () => tests(openedFor(openEmbedded)));
  describe.skipIf(!server)(`${title}, database server`, () =>
    tests(openedFor(() => openOnServer(server ?? ""))),
  );
}

type Opened = { readonly database: Database; end(): Promise<void> };

function openedFor(open: () => Promise<Opened>): () => Database {
  let opened: Opened | undefined;
  beforeAll(async () => {
    opened = await open();
  });
  afterAll(async () => {
    await opened?.end();
  });
  return () => {
    if (!opened) throw new Error("The database is open only inside tests and their hooks.");
    return opened.database;
  };
}

async function openEmbedded(): Promise<Opened> {
  const database = await openDatabase({ url: null, dataFolder: null, prismaFolder });
  return { database, end: () => database.close() };
}

/** Makes a database of its own on the server, and drops it at the end. */
async function openOnServer(server: string): Promise<Opened> {
  const made = await makeThrowAwayDatabase(server);
  const database = await openDatabase({ url: made.url, dataFolder: null, prismaFolder });
  return {
    database,
    async end() {
      await database.close();
      await made.drop();
    },
  };
}
