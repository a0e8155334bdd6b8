import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

it("every file and every export is used by something", async () => {
  expect(await knip("files,exports,types,duplicates,unresolved")).toEqual("");
}, 60_000);

it("every package in package.json is used, and every package used is in package.json", async () => {
  expect(await knip("dependencies,unlisted")).toEqual("");
}, 60_000);

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
