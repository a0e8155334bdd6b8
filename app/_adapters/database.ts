import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { PrismaPg } from "@prisma/adapter-pg";
import pg from "pg";
import { type DataFolderLock, lockDataFolder } from "./data-folder-lock.ts";
import { openEmbeddedPostgres } from "./embedded-postgres.ts";
import { PrismaClient } from "./generated/client.ts";
import { applyMigrations } from "./migrate.ts";
import { withWholeScripts } from "./whole-scripts.ts";

export type Database = {
  readonly kind: "embedded" | "server";
  readonly prisma: PrismaClient;
  /** What an operator's request to the process that holds the embedded database must carry; null on a server. */
  readonly operatorKey: string | null;
  /** Lets others be told where the process that holds the embedded database answers. */
  announce(address: string): void;
  /** Names of the migrations applied while opening. */
  readonly migrated: readonly string[];
  /** For the embedded database: everything in it as a compressed archive, to be restored elsewhere. */
  dump(): Promise<Blob>;
  close(): Promise<void>;
};

export type DatabaseSettings = {
  /** Address of a Postgres server with pgvector; null for the embedded database. */
  readonly url: string | null;
  /** Where the embedded database and the images lie; null keeps an embedded database in memory. */
  readonly dataFolder: string | null;
  /** The folder with schema.prisma, migrations and the prepared dump. */
  readonly prismaFolder: string;
};

/** Opens the database the settings name and brings its tables up to date. */
export async function openDatabase(settings: DatabaseSettings): Promise<Database> {
  return settings.url === null ? openEmbedded(settings) : openServer(settings.url, settings.prismaFolder);
}

async function openEmbedded({ dataFolder, prismaFolder }: DatabaseSettings): Promise<Database> {
  let lock: DataFolderLock | null = null;
  if (dataFolder !== null) {
    mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
    lock = lockDataFolder(dataFolder);
  }
  try {
    const folder = dataFolder === null ? null : join(dataFolder, "database");
    const embedded = await openEmbeddedPostgres(folder, join(prismaFolder, "empty-database.tar.br"));
    // The embedded engine has one connection: more than one client at a time would mix up their answers.
    const adapter = new PrismaPg({ host: embedded.host, user: "postgres", database: "postgres", max: 1 });
    const migrated = await migrate(adapter, prismaFolder);
    // A transaction holds the only connection, so others wait their turn longer than Prisma would let them.
    const prisma = new PrismaClient({ adapter, transactionOptions: { maxWait: 30_000, timeout: 30_000 } });
    return {
      kind: "embedded",
      prisma,
      migrated,
      operatorKey: lock?.key ?? null,
      announce: (address) => lock?.announce(address),
      dump: () => embedded.engine.dumpDataDir("gzip"),
      close: async () => {
        await prisma.$disconnect();
        await embedded.close();
        lock?.release();
      },
    };
  } catch (error) {
    lock?.release();
    throw error;
  }
}

async function openServer(url: string, prismaFolder: string): Promise<Database> {
  const adapter = new PrismaPg(new pg.Pool({ connectionString: url, max: 10 }), {
    disposeExternalPool: true,
  });
  const migrated = await migrateServer(url, prismaFolder);
  const prisma = new PrismaClient({ adapter, transactionOptions: { maxWait: 10_000, timeout: 20_000 } });
  return {
    kind: "server",
    prisma,
    migrated,
    operatorKey: null,
    announce: () => undefined,
    dump: () => Promise.reject(new Error("A database on a server is dumped with its own tools (pg_dump).")),
    close: () => prisma.$disconnect(),
  };
}

/** One process at a time migrates: the others wait for it on an advisory lock and then find nothing to do. */
async function migrateServer(url: string, prismaFolder: string): Promise<readonly string[]> {
  const guard = new pg.Client({ connectionString: url });
  await guard.connect();
  try {
    await guard.query("SELECT pg_advisory_lock(hashtext('countermark migrations'))");
    return await migrate(new PrismaPg({ connectionString: url }), prismaFolder);
  } finally {
    await guard.end();
  }
}

async function migrate(adapter: PrismaPg, prismaFolder: string): Promise<readonly string[]> {
  const scripts = withWholeScripts(adapter);
  try {
    return await applyMigrations(scripts, prismaFolder);
  } finally {
    await scripts.closeAll();
  }
}
