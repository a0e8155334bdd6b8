import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { trackedFiles } from "./tracked-files.ts";

/** Packages that nothing imports because Node or npm runs them. */
const COMMANDS = new Set(["knip", "tsx", "typescript"]);

const root = fileURLToPath(new URL("../..", import.meta.url));

it("every file and every export is used by something", async () => {
  expect(await knip("files,exports,types,duplicates,unresolved")).toEqual("");
}, 60_000);

it("every package used is in package.json", async () => {
  expect(await knip("unlisted")).toEqual("");
}, 60_000);

it("every package in package.json is named by some file that uses it", () => {
  const { dependencies, devDependencies } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  const used = trackedFiles()
    .filter(({ path }) => /\.(tsx?|mjs|css|json)$/.test(path) && !/^package(-lock)?\.json$/.test(path))
    .map(({ text }) => text() ?? "")
    .join("\n");
  const unused = Object.keys({ ...dependencies, ...devDependencies }).filter((name) => {
    // Types belong to the package they describe; one of a family may be named without the family's name.
    const bare = name.replace(/^@[^/]+\//, "");
    return !COMMANDS.has(name) && !used.includes(bare);
  });
  expect(unused).toEqual([]);
});

/** @returns what knip finds, as it prints it; empty when it finds nothing */
function knip(issueTypes: string): Promise<string> {
  const words = [
    "--config",
    "tests/architecture/knip.json",
    "--no-progress",
    "--no-config-hints",
    "--include",
    issueTypes,
  ];
  return new Promise((resolve, reject) => {
    execFile(
      process.execPath,
      ["node_modules/knip/bin/knip.js", ...words],
      { cwd: root },
      (error, out, problems) => {
        if (error !== null && error.code !== 1) reject(new Error(problems || out));
        else resolve(out.trim());
      },
    );
  });
}
