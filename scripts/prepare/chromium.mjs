import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { step } from "./report.mjs";
import { Refused, run } from "./run.mjs";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/**
 * Finds the browser that the tests drive; on Debian, as root, installs it when there is none.
 * @returns {Promise<string>} the path of its program
 */
export async function findOrInstallChromium() {
  const found = findChromium();
  if (found) return found;
  if (!existsSync("/etc/debian_version") || process.getuid?.() !== 0) {
    throw new Refused(
      "The tests need Chromium and found none: install it (on Debian: apt-get install chromium) or name its program with CHROMIUM_PATH.",
    );
  }
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  await step("installing Chromium", async (note) => {
    note("reading the package lists");
    await run("apt-get", ["update", "-qq"], { env });
    note("fetching and unpacking");
    await run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], { env });
  });
  const installed = findChromium();
  if (!installed) throw new Refused("Chromium was installed, but no chromium is on the PATH.");
  return installed;
}

function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (isProgram(named)) return named;
    throw new Refused(`CHROMIUM_PATH must name a program. Received ${named}.`);
  }
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    for (const name of names) if (folder && isProgram(join(folder, name))) return join(folder, name);
  }
  return undefined;
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
