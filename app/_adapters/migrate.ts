import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { SqlMigrationAwareDriverAdapterFactory } from "@prisma/driver-adapter-utils";
import type { MigrationList } from "@prisma/schema-engine-wasm";
import { openSchemaEngine } from "./schema-engine.ts";

const NO_FILTER = { externalTables: [], externalEnums: [] };

/**
 * Applies the migrations that a database lacks, in the order of their names, and records them with checksums
 * in `_prisma_migrations`. Doing it twice does nothing.
 * @returns the names of those applied now
 */
export async function applyMigrations(
  factory: SqlMigrationAwareDriverAdapterFactory,
  folder: string,
): Promise<readonly string[]> {
  const engine = await openSchemaEngine(await readFile(join(folder, "schema.prisma"), "utf8"), factory);
  try {
    const result = await engine.applyMigrations({
      migrationsList: await listMigrations(folder),
      filters: NO_FILTER,
    });
    return result.appliedMigrationNames;
  } finally {
    engine.free();
  }
}

/**
 * The SQL that would bring a database that has the given migrations to what schema.prisma says; empty when nothing
 * is missing. Needs a database it may use as scratch: it diffs the connected one.
 */
export async function writeDifference(
  factory: SqlMigrationAwareDriverAdapterFactory,
  folder: string,
): Promise<string> {
  const schema = await readFile(join(folder, "schema.prisma"), "utf8");
  const engine = await openSchemaEngine(schema, factory);
  const files = [{ path: join(folder, "schema.prisma"), content: schema }];
  try {
    const result = await engine.diff({
      from: { tag: "schemaDatasource", files, configDir: folder },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: null,
      filters: { externalTables: ["public._prisma_migrations"], externalEnums: [] },
      shadowDatabaseUrl: null,
    } as Parameters<typeof engine.diff>[0]);
    return result.stdout ?? "";
  } finally {
    engine.free();
  }
}

async function listMigrations(folder: string): Promise<MigrationList> {
  const baseDir = join(folder, "migrations");
  const names = (await readdir(baseDir, { withFileTypes: true }))
    .filter((e) => e.isDirectory())
    .map((e) => e.name);
  return {
    baseDir,
    lockfile: { path: "migration_lock.toml", content: 'provider = "postgresql"\n' },
    shadowDbInitScript: "",
    migrationDirectories: await Promise.all(
      names.sort().map(async (name) => ({
        path: name,
        migrationFile: {
          path: "migration.sql",
          content: {
            tag: "ok" as const,
            value: await readFile(join(baseDir, name, "migration.sql"), "utf8"),
          },
        },
      })),
    ),
  };
}
