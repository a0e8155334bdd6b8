import { randomBytes } from "node:crypto";
import { fileURLToPath } from "node:url";
import pg from "pg";
import { afterAll, beforeAll, describe } from "vitest";
import { type Database, openDatabase } from "#adapters/database";

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
  const name = `test_${randomBytes(8).toString("hex")}`;
  await onServer(server, `CREATE DATABASE ${name}`);
  const url = new URL(server);
  url.pathname = `/${name}`;
  const database = await openDatabase({ url: url.href, dataFolder: null, prismaFolder });
  return {
    database,
    async end() {
      await database.close();
      await onServer(server, `DROP DATABASE ${name} WITH (FORCE)`);
    },
  };
}

async function onServer(server: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
