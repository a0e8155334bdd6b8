import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { step } from "./report.mjs";
import { root, run } from "./run.mjs";

/** What the built app is made from. Prisma's client is made from the schema, so the schema stands for it. */
const sources = [
  "app",
  "messages",
  "ml",
  "public",
  "prisma/schema.prisma",
  "instrumentation.ts",
  "proxy.ts",
  "next.config.ts",
  "postcss.config.mjs",
  "tsconfig.json",
  "package.json",
  "package-lock.json",
];
const leftOut = new Set(["app/_adapters/generated", "ml/train", "ml/evaluate", "ml/model"]);

/** Writes the database client when the schema has changed. */
export async function generateClient() {
  await step("writing the database client", () => run(process.execPath, tsx("scripts/prisma-generate.ts")));
}

/** @returns {boolean} whether the database client is missing or older than the schema it is made from */
export function clientIsOld() {
  const stamp = join(root, "app/_adapters/generated/made-from.txt");
  if (!existsSync(stamp)) return true;
  const schema = createHash("sha256")
    .update(readFileSync(join(root, "prisma/schema.prisma")))
    .digest("hex");
  return !readFileSync(stamp, "utf8").includes(schema);
}

/** The words that make Node run a TypeScript program. */
export function tsx(file, ...words) {
  return [join(root, "node_modules/tsx/dist/cli.mjs"), file, ...words];
}

/** @returns {boolean} whether the app must be built (again) */
export function buildIsNeeded() {
  const stamp = stampFile();
  return !existsSync(stamp) || readFileSync(stamp, "utf8") !== hashOfSources();
}

/** Builds the app, and records what it was built from. */
export async function build() {
  const from = hashOfSources();
  await step("building the app", (note) =>
    run(process.execPath, [nextProgram(), "build"], {
      env: { NEXT_TELEMETRY_DISABLED: "1", NODE_ENV: "production" },
      onLine: (line) => {
        const text = line.trim();
        if (/^(Creating|Running|Collecting|Generating|Finalizing)/.test(text)) note(`· ${text}`);
      },
    }),
  );
  writeFileSync(stampFile(), from);
}

/** @returns {string} Next's own program */
export function nextProgram() {
  return join(root, "node_modules/next/dist/bin/next");
}

function stampFile() {
  return join(root, ".next/built-from.txt");
}

function hashOfSources() {
  const hash = createHash("sha256");
  for (const path of sources.flatMap(filesUnder)) {
    hash
      .update(path)
      .update("\0")
      .update(readFileSync(join(root, path)))
      .update("\0");
  }
  return `${process.version} ${hash.digest("hex")}\n`;
}

/** @returns {string[]} the files under a path of the checkout, in a fixed order */
function filesUnder(path) {
  const full = join(root, path);
  if (!existsSync(full) || leftOut.has(path)) return [];
  try {
    return readdirSync(full)
      .sort()
      .flatMap((name) => filesUnder(`${path}/${name}`));
  } catch (error) {
    if (error.code === "ENOTDIR") return [path];
    throw error;
  }
}
