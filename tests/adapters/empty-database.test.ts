import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { openDatabase } from "#adapters/database";

const prismaFolder = fileURLToPath(new URL("../../prisma", import.meta.url));

it("a new embedded database is unpacked with every migration applied", async () => {
  expect(existsSync(join(prismaFolder, "empty-database.tar.br"))).toBe(true);
  const database = await openDatabase({ url: null, dataFolder: null, prismaFolder });
  try {
    expect(
      database.migrated,
      "prisma/empty-database.tar.br is older than the migrations: npx tsx scripts/make-empty-database.ts",
    ).toEqual([]);
    expect(await database.prisma.entry.count()).toBe(0);
  } finally {
    await database.close();
  }
});
