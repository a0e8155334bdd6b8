import { existsSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { openDatabase } from "#adapters/database";

const prismaFolder = fileURLToPath(new URL("../../prisma", import.meta.url));

it("a new embedded database is unpacked from the dump, and what has come since is applied on top", async () => {
  const dump = join(prismaFolder, "empty-database.tar.br");
  expect(existsSync(dump)).toBe(true);
  const named = (await readdir(join(prismaFolder, "migrations"))).filter((name) => /^\d+_/.test(name)).sort();
  const database = await openDatabase({ url: null, dataFolder: null, prismaFolder });
  try {
    expect(database.migrated.length).toBeLessThan(named.length);
    expect(database.migrated).toEqual(named.slice(named.length - database.migrated.length));
    expect(await database.prisma.entry.count()).toBe(0);
  } finally {
    await database.close();
  }
});
