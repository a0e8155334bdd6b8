import { createHash, randomBytes } from "node:crypto";
import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Blobs } from "../_usecases/ports.ts";
import { describeImage, reduceImage } from "./reduce-image.ts";

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
      await writeWhole(path, bytes);
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
    async remove(sha256) {
      await Promise.all(filesOf(pathOf(sha256)).map((path) => rm(path, { force: true })));
    },
  };
}

/** The widths in pixels at which a smaller copy is offered. */
export const REDUCED_WIDTHS = [320, 640, 1280] as const;

const filesOf = (path: string): readonly string[] => [
  path,
  ...REDUCED_WIDTHS.map((w) => reducedPath(path, w)),
];
const reducedPath = (path: string, width: number) => `${path}-${width}.webp`;

/**
 * A smaller copy of a kept image as WebP, made the first time it is asked for and gone when the image goes.
 * @returns null when there is no such image; the image itself when it is no wider
 */
export async function reducedCopy(
  folder: string,
  sha256: string,
  width: (typeof REDUCED_WIDTHS)[number],
): Promise<Uint8Array | null> {
  const blobs = createBlobs(folder);
  const kept = await blobs.get(sha256);
  if (!kept) return null;
  const path = reducedPath(join(folder, sha256.slice(0, 2), sha256), width);
  if (await exists(path)) return readFile(path);
  if ((await describeImage(kept)).width <= width) return kept;
  const reduced = await reduceImage(kept, width);
  await writeWhole(path, reduced);
  return reduced;
}

/** A file appears whole or not at all. */
async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const half = `${path}.${randomBytes(6).toString("hex")}`;
  await writeFile(half, bytes, { mode: 0o600, flush: true });
  await rename(half, path);
}

async function exists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}
