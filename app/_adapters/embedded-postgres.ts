import { existsSync } from "node:fs";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { brotliDecompress } from "node:zlib";
import { PGlite } from "@electric-sql/pglite";
import { pg_trgm } from "@electric-sql/pglite/contrib/pg_trgm";
import { unaccent } from "@electric-sql/pglite/contrib/unaccent";
import { vector } from "@electric-sql/pglite-pgvector";
import { PGLiteSocketServer } from "@electric-sql/pglite-socket";

/** The embedded database, answering on a socket that only this user can reach. */
export type EmbeddedPostgres = {
  /** Folder of the socket, as a Postgres client takes it for its host. */
  readonly host: string;
  readonly engine: PGlite;
  close(): Promise<void>;
};

/**
 * Opens the embedded database on disk. A folder that doesn't exist yet is made from a prepared dump, which takes
 * about 2 s; without the dump the engine makes one from nothing, which takes about 10 s.
 * @param folder null keeps the database in memory
 * @param dump path of the prepared dump, a tar archive compressed with Brotli
 */
export async function openEmbeddedPostgres(folder: string | null, dump: string): Promise<EmbeddedPostgres> {
  const isNew = folder === null || !existsSync(join(folder, "PG_VERSION"));
  const prepared =
    isNew && existsSync(dump)
      ? { loadDataDir: new Blob([await promisify(brotliDecompress)(await readFile(dump))]) }
      : {};
  const engine = await PGlite.create({
    ...(folder === null ? {} : { dataDir: folder }),
    ...prepared,
    extensions: { vector, pg_trgm, unaccent },
    relaxedDurability: false,
  });
  const host = await mkdtemp(join(tmpdir(), "countermark-"));
  // One client at a time is served, but the next may knock before the last one's goodbye has been read: with room
  // for one alone it would be thrown out.
  const server = new PGLiteSocketServer({ db: engine, path: join(host, ".s.PGSQL.5432"), maxConnections: 4 });
  await server.start();
  return {
    host,
    engine,
    close: async () => {
      await server.stop();
      await engine.close();
      await rm(host, { recursive: true, force: true });
    },
  };
}
