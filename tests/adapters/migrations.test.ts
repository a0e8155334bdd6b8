import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { PrismaPg } from "@prisma/adapter-pg";
import { expect, it } from "vitest";
import { openEmbeddedPostgres } from "#adapters/embedded-postgres";
import { writeSchema } from "#adapters/migrate";
import { describeOnBothDatabases } from "../setup/databases.ts";

const prismaFolder = fileURLToPath(new URL("../../prisma", import.meta.url));
const folder = join(prismaFolder, "migrations");

describeOnBothDatabases("migrations", (database) => {
  it("are all applied and recorded with their checksums", async () => {
    const names = (await readdir(folder, { withFileTypes: true }))
      .filter((e) => e.isDirectory())
      .map((e) => e.name);
    const rows = await database().prisma.$queryRaw<{ migration_name: string; checksum: string }[]>`
      SELECT migration_name, checksum FROM _prisma_migrations WHERE finished_at IS NOT NULL ORDER BY 1`;
    expect(rows.map((r) => r.migration_name)).toEqual(names.sort());
    for (const row of rows) expect(row.checksum).toMatch(/^[0-9a-f]{64}$/);
  });

  it("leave the tables that schema.prisma describes, no more and no less", async () => {
    const described = await openEmbeddedPostgres(null, "");
    try {
      const sql = await writeSchema(
        new PrismaPg({
          host: described.host,
          user: "postgres",
          database: "postgres",
          max: 1,
        }),
        prismaFolder,
      );
      await described.engine.exec(sql);
      const wanted = (await described.engine.query<{ line: string }>(TABLES)).rows.map((r) => r.line);
      const found = await database().prisma.$queryRawUnsafe<{ line: string }[]>(TABLES);
      expect(wanted.length).toBeGreaterThan(80);
      expect(found.map((r) => r.line)).toEqual(wanted);
    } finally {
      await described.close();
    }
  });
});

/** Every column, index and constraint of the public schema, a line each. */
const TABLES = `
  SELECT line FROM (SELECT format('%s.%s %s %s %s', table_name, column_name, udt_name, is_nullable, column_default) AS line
  FROM information_schema.columns WHERE table_schema = 'public' AND table_name <> '_prisma_migrations'
  UNION ALL
  SELECT indexdef FROM pg_indexes WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'
  UNION ALL
  SELECT format('%s %s', conrelid::regclass, pg_get_constraintdef(oid)) FROM pg_constraint
  WHERE connamespace = 'public'::regnamespace AND contype IN ('p', 'f', 'u', 'c')
    AND conrelid::regclass::text <> '_prisma_migrations'
  ) AS lines ORDER BY line COLLATE "C"`;
