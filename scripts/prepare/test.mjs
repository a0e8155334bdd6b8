import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build, buildIsNeeded, generateClient } from "./build.mjs";
import { findOrInstallChromium } from "./chromium.mjs";
import { installWhenNeeded } from "./install.mjs";
import { step } from "./report.mjs";
import { CommandFailed, endChildren, Refused, root, run, show, stopChildrenWhenAsked } from "./run.mjs";

const resultsFile = join(root, "tests/.output/results.json");

/**
 * Makes everything ready that is not, checks form and types, builds, and runs the tests.
 * The last line says how many passed, failed and were skipped; a check that fails counts as one failed.
 * @param {readonly string[]} words passed on to vitest
 */
export async function test(words) {
  stopChildrenWhenAsked(() => undefined);
  const began = Date.now();
  try {
    await installWhenNeeded();
    await generateClient();
    process.env.CHROMIUM_PATH = await findOrInstallChromium();
    if (buildIsNeeded()) await build();
    const failedChecks = await check();
    const status = await runVitest(words);
    const { passed, failed, skipped } = readResults();
    console.log(`\nDone in ${Math.round((Date.now() - began) / 1000)} s`);
    process.exitCode = status !== 0 || failedChecks > 0 || passed === 0 ? 1 : 0;
    // A run that broke outside of any test has failed all the same.
    const uncounted = status !== 0 && failed === 0 ? 1 : 0;
    console.log(`${passed} passed, ${failed + failedChecks + uncounted} failed, ${skipped} skipped`);
  } catch (error) {
    endChildren("SIGTERM");
    console.error(error instanceof CommandFailed || error instanceof Refused ? `\n${error.message}` : error);
    console.log("0 passed, 1 failed, 0 skipped");
    process.exitCode = 1;
  }
}

/** @returns {Promise<number>} how many of the checks failed; what they found is printed */
async function check() {
  const checks = [
    [
      "checking form and lint",
      ["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."],
    ],
    ["checking types", ["node_modules/typescript/bin/tsc", "--noEmit"]],
  ];
  let failed = 0;
  for (const [title, words] of checks) {
    try {
      await step(title, () => run(process.execPath, words));
    } catch (error) {
      if (!(error instanceof CommandFailed)) throw error;
      console.error(error.message);
      failed++;
    }
  }
  return failed;
}

function runVitest(words) {
  mkdirSync(join(root, "tests/.output"), { recursive: true });
  rmSync(resultsFile, { force: true });
  const fixed = ["run", "--config", "tests/vitest.config.ts", "--reporter=default", "--reporter=json"];
  return show(process.execPath, [
    join(root, "node_modules/vitest/vitest.mjs"),
    ...fixed,
    `--outputFile.json=${resultsFile}`,
    ...words,
  ]);
}

function readResults() {
  if (!existsSync(resultsFile)) return { passed: 0, failed: 0, skipped: 0 };
  const results = JSON.parse(readFileSync(resultsFile, "utf8"));
  // A file that could not even be loaded holds no test, but has failed.
  const broken = results.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.length === 0,
  );
  return {
    passed: results.numPassedTests,
    failed: results.numFailedTests + broken.length,
    skipped: results.numPendingTests + results.numTodoTests,
  };
}
