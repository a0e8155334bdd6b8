import { randomBytes } from "node:crypto";
import pg from "pg";

/** A new, empty database on a server, for one test or measurement. */
export type ThrowAwayDatabase = { readonly url: string; drop(): Promise<void> };

/**
 * Makes one beside the database that an address names; the address's user must be allowed to.
 * @param server address of a Postgres server
 */
export async function makeThrowAwayDatabase(server: string): Promise<ThrowAwayDatabase> {
  const name = `throw_away_${randomBytes(8).toString("hex")}`;
  await tell(server, `CREATE DATABASE ${name}`);
  const url = new URL(server);
  url.pathname = `/${name}`;
  return { url: url.href, drop: () => tell(server, `DROP DATABASE ${name} WITH (FORCE)`) };
}

async function tell(server: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
