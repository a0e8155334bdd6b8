import { execFileSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { readEnvironment } from "#web/environment";
import { connect } from "#web/live";
import { fill, type Remembered } from "./benchmark/fill.ts";
import { measureHost } from "./benchmark/host.ts";
import { drawQueries } from "./benchmark/queries.ts";
import { measureRecall } from "./benchmark/recall.ts";
import { importLine, type Measured, printTable } from "./benchmark/table.ts";
import { makeThrowAwayDatabase } from "./throw-away-database.ts";

/**
 * Measures a look-up stage by stage, the page that shows it, the import, the start and the memory, on drawn marks
 * in databases that are thrown away afterwards: the embedded one, and one on the server that DATABASE_URL or
 * TEST_DATABASE_URL names.
 *
 *   npm run benchmark -- [--photographs 1000,10000] [--queries 60] [--databases embedded,server]
 */
const { values } = parseArgs({
  options: {
    photographs: { type: "string", default: "1000,10000" },
    queries: { type: "string", default: "60" },
    databases: { type: "string", default: "embedded,server" },
  },
});
const sizes = values.photographs.split(",").map(Number);
const queryCount = Number(values.queries);
if (!sizes.every((size, i) => Number.isInteger(size) && size > (sizes[i - 1] ?? 0) && size % 5 === 0))
  throw new Error(`--photographs must be rising multiples of 5. Received ${values.photographs}.`);
if (!Number.isInteger(queryCount) || queryCount < 1)
  throw new Error(`--queries must be a whole number above 0. Received ${values.queries}.`);

const databases = values.databases.split(",");
if (!databases.every((name) => name === "embedded" || name === "server"))
  throw new Error(`--databases must be embedded, server or both. Received ${values.databases}.`);

const server = process.env.DATABASE_URL || process.env.TEST_DATABASE_URL;
execFileSync(process.execPath, ["scripts/build.mjs"], { stdio: "inherit" });
const remembered: Remembered = new Map();
const measured: Measured[] = databases.includes("embedded") ? await measureDatabase("embedded", {}) : [];
if (server && databases.includes("server")) {
  const made = await makeThrowAwayDatabase(server);
  try {
    measured.push(...(await measureDatabase("server", { DATABASE_URL: made.url })));
  } finally {
    await made.drop();
  }
} else if (databases.includes("server"))
  console.log("Neither DATABASE_URL nor TEST_DATABASE_URL is set: no database server is measured.");
console.log(
  `\n${cpus().length} cores, ${cpus()[0]?.model}, Node ${process.version}; ${queryCount} look-ups of 12-megapixel JPEGs\n`,
);
printTable(measured);

/** Fills one database size by size, measuring at each. */
async function measureDatabase(
  name: string,
  database: Readonly<Record<string, string>>,
): Promise<Measured[]> {
  const data = await mkdtemp(join(tmpdir(), "countermark-benchmark-"));
  const settings = { DATABASE_URL: "", COUNTERMARK_DATA: data, COUNTERMARK_DEMO: "0", ...database };
  try {
    const rows: Measured[] = [];
    for (const [i, photographs] of sizes.entries()) {
      const queries = await drawQueries(queryCount, photographs);
      const wired = await connect(readEnvironment({ NODE_ENV: "production", ...settings }));
      const before = sizes[i - 1] ?? 0;
      // The first import of each database computes every vector, for its rate is reported.
      const cost = await fill(wired, before, photographs - before, i === 0 ? null : remembered);
      console.log(`${name}: ${importLine(cost)}`);
      const recall = await measureRecall(wired, queries);
      await wired.database.close();
      const host = await measureHost(settings, queries);
      console.log(`${name}: ${photographs} photographs measured`);
      rows.push({ name, photographs, cost, recall, host });
    }
    return rows;
  } finally {
    await rm(data, { recursive: true, force: true });
  }
}
