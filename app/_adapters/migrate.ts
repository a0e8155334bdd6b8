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

/** The SQL that makes an empty database what schema.prisma says; what a migration is written from. */
export async function writeSchema(
  factory: SqlMigrationAwareDriverAdapterFactory,
  folder: string,
): Promise<string> {
  const path = join(folder, "schema.prisma");
  const content = await readFile(path, "utf8");
  const engine = await openSchemaEngine(content, factory);
  try {
    const result = await engine.diff({
      from: { tag: "empty" },
      to: { tag: "schemaDatamodel", files: [{ path, content }] },
      script: true,
      exitCode: null,
      filters: NO_FILTER,
    });
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
