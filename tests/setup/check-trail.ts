import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * Checks a downloaded trail as a stranger does: with the script that DEVELOPERS.md prints, and Node alone.
 * @returns whether it is whole, and what the script said
 */
export function checkTrail(trail: string): { readonly whole: boolean; readonly said: string } {
  const developers = readFileSync(new URL("../../DEVELOPERS.md", import.meta.url), "utf8");
  const script = /```js\n(\/\/ node check-trail\.mjs[\s\S]*?)```/.exec(developers)?.[1];
  if (!script) throw new Error("DEVELOPERS.md prints no script to check a trail with.");
  const folder = mkdtempSync(join(tmpdir(), "countermark-trail-"));
  try {
    writeFileSync(join(folder, "check-trail.mjs"), script);
    writeFileSync(join(folder, "trail.json"), trail);
    const said = execFileSync(process.execPath, ["check-trail.mjs", "trail.json"], {
      cwd: folder,
      encoding: "utf8",
    });
    return { whole: true, said: said.trim() };
  } catch (error) {
    return { whole: false, said: String((error as { readonly stdout?: string }).stdout).trim() };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
