import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { step } from "./report.mjs";
import { root, run } from "./run.mjs";

/**
 * Installs the packages when what lies in node_modules is not what the lock asks for.
 * npm itself records what it installed in node_modules/.package-lock.json, last of all, so an interrupted
 * installation counts as none. Packages for other processors and systems are optional and may be missing.
 */
export async function installWhenNeeded() {
  const missing = firstDifference();
  if (missing === undefined) return;
  await step(`installing packages: ${missing}`, () =>
    run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]),
  );
}

/** @returns {string | undefined} what differs first between the lock and what is installed */
function firstDifference() {
  const record = join(root, "node_modules/.package-lock.json");
  if (!existsSync(record)) return "none are installed yet";
  const wanted = packagesOf(join(root, "package-lock.json"));
  const there = packagesOf(record);
  for (const [path, entry] of Object.entries(wanted)) {
    if (path === "") continue;
    const found = there[path];
    if (found === undefined ? !entry.optional : found.version !== entry.version) {
      return `${path.replace(/^.*node_modules\//, "")} ${entry.version} is missing`;
    }
  }
  const extra = Object.keys(there).find((path) => wanted[path] === undefined);
  return extra === undefined ? undefined : `${extra} is not in the lock`;
}

function packagesOf(file) {
  return JSON.parse(readFileSync(file, "utf8")).packages;
}
