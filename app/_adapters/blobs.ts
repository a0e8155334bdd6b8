import { createHash, randomBytes } from "node:crypto";
import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Blobs } from "../_usecases/ports.ts";

/** Is the text a SHA-256 in hexadecimal? Anything else never reaches the disk. */
export const isSha256 = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);

/** Images on disk, named by the SHA-256 of their bytes: the same image is kept once, a name never changes meaning. */
export function createBlobs(folder: string): Blobs {
  const pathOf = (sha256: string) => {
    if (!isSha256(sha256)) throw new RangeError(`sha256 must be 64 hexadecimal digits. Received ${sha256}.`);
    return join(folder, sha256.slice(0, 2), sha256);
  };
  return {
    async put(bytes) {
      const sha256 = createHash("sha256").update(bytes).digest("hex");
      const path = pathOf(sha256);
      if (await exists(path)) return { sha256, isNew: false };
      await mkdir(dirname(path), { recursive: true, mode: 0o700 });
      const half = `${path}.${randomBytes(6).toString("hex")}`;
      await writeFile(half, bytes, { mode: 0o600, flush: true });
      await rename(half, path);
      return { sha256, isNew: true };
    },
    async get(sha256) {
      if (!isSha256(sha256)) return null;
      try {
        return await readFile(pathOf(sha256));
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
        throw error;
      }
    },
    remove: (sha256) => rm(pathOf(sha256), { force: true }),
  };
}

async function exists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}
