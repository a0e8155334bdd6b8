import { execFileSync } from "node:child_process";
import { lstatSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));

export type TrackedFile = {
  /** From the checkout's top, with `/`. */
  readonly path: string;
  readonly bytes: number;
  /** The file's text; null for a binary file. */
  text(): string | null;
};

/** Every file that git tracks and that is still there. */
export function trackedFiles(): readonly TrackedFile[] {
  const paths = execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8" }).split("\0");
  return paths.flatMap((path) => {
    const found = path === "" ? undefined : lstatSync(join(root, path), { throwIfNoEntry: false });
    return found?.isFile() ? [{ path, bytes: found.size, text: () => readText(join(root, path)) }] : [];
  });
}

function readText(file: string): string | null {
  const bytes = readFileSync(file);
  return bytes.subarray(0, 8000).includes(0) ? null : bytes.toString("utf8");
}
