import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { createBlobs } from "#adapters/blobs";
import { type Database, openDatabase } from "#adapters/database";
import { createModels } from "#adapters/models-store";
import { describeModels } from "#usecases/describe-models";
import type { Environment } from "#web/environment";
import { openEmbedders } from "#web/live";
import { type Finding, finding, tryTo } from "./finding.ts";
import { describeModelsInWords } from "./models.ts";

const EXTENSIONS = ["vector", "pg_trgm", "unaccent"] as const;
const PAGE = 500;

/** Opens the database, which brings its tables up to date, and looks through everything that must fit together. */
export async function checkDatabase(environment: Environment): Promise<readonly Finding[]> {
  const { databaseUrl, dataFolder } = environment;
  if (databaseUrl === null && !existsSync(join(dataFolder, "database")))
    return [finding("database", true, `none yet in ${dataFolder}: npm start makes it`)];
  let opened: Database;
  try {
    opened = await openDatabase({ ...environment, url: databaseUrl });
  } catch (error) {
    return [finding("database", false, `can't be opened: ${error instanceof Error ? error.message : error}`)];
  }
  try {
    return [
      await tryTo("database", () => describe(opened)),
      await tryTo("extensions", () => listExtensions(opened)),
      await tryTo("images", () => checkImages(opened, join(dataFolder, "images"))),
      await tryTo("models", async () => {
        const embedders = await openEmbedders(environment);
        return describeModelsInWords(await describeModels({ embedders, models: createModels(opened) }));
      }),
    ];
  } finally {
    await opened.close();
  }
}

async function describe({ kind, prisma, migrated }: Database): Promise<string> {
  const [row] = await prisma.$queryRaw<{ version: string; applied: number }[]>`
    SELECT current_setting('server_version') AS version,
      (SELECT count(*)::int FROM _prisma_migrations WHERE finished_at IS NOT NULL) AS applied`;
  const now = migrated.length > 0 ? `, of them now: ${migrated.join(", ")}` : "";
  return `${kind}, Postgres ${row?.version}, ${row?.applied} migrations applied${now}`;
}

async function listExtensions({ prisma }: Database): Promise<string> {
  const rows = await prisma.$queryRaw<{ name: string; version: string }[]>`
    SELECT extname AS name, extversion AS version FROM pg_extension`;
  const missing = EXTENSIONS.filter((name) => !rows.some((row) => row.name === name));
  if (missing.length > 0) throw new Error(`missing: ${missing.join(", ")}`);
  return EXTENSIONS.map((name) => `${name} ${rows.find((row) => row.name === name)?.version}`).join(", ");
}

/** Reads every image that a photograph or a look-up shows, and compares its bytes with its name. */
async function checkImages({ prisma }: Database, folder: string): Promise<string> {
  const blobs = createBlobs(folder);
  const { sha256: probe } = await blobs.put(
    new TextEncoder().encode("written by the doctor to see whether it can"),
  );
  await blobs.remove(probe);
  let seen = 0;
  const missing: string[] = [];
  const changed: string[] = [];
  for (let after = ""; ; ) {
    const rows = await prisma.$queryRaw<{ sha256: string }[]>`
      SELECT sha256 FROM (SELECT sha256 FROM photographs UNION SELECT sha256 FROM look_up_photographs) AS shown
      WHERE sha256 > ${after} ORDER BY sha256 LIMIT ${PAGE}`;
    for (const { sha256 } of rows) {
      const bytes = await blobs.get(sha256);
      if (bytes === null) missing.push(sha256);
      else if (createHash("sha256").update(bytes).digest("hex") !== sha256) changed.push(sha256);
      after = sha256;
    }
    seen += rows.length;
    if (rows.length < PAGE) break;
  }
  if (missing.length + changed.length > 0)
    throw new Error(
      `${folder}: of ${seen} images ${missing.length} are missing and ${changed.length} are not what they were` +
        `: ${[...missing, ...changed].slice(0, 3).join(", ")}`,
    );
  return `${folder} can be written to; ${seen} images, each there and unchanged`;
}
