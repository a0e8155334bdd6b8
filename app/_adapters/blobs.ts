import { createHash, randomBytes } from "node:crypto";
import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { isSha256, REDUCED_WIDTHS, type ReducedWidth } from "#core/photographs/limits";
import type { Blobs } from "../_usecases/ports.ts";
import { describeImage, reduceImage } from "./reduce-image.ts";

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

const filesOf = (path: string): readonly string[] => [
  path,
  ...REDUCED_WIDTHS.map((w) => reducedPath(path, w)),
];
const reducedPath = (path: string, width: number) => `${path}-${width}.webp`;

/** An image ready to be sent. */
export type Picture = { readonly bytes: Uint8Array; readonly type: string };

/** Kept images as they are shown: whole, or as a smaller copy. */
export function createPictures(folder: string) {
  return {
    /** @returns null when there is no such image */
    async show(sha256: string, width: ReducedWidth | null): Promise<Picture | null> {
      const bytes = await (width === null
        ? createBlobs(folder).get(sha256)
        : reducedCopy(folder, sha256, width));
      return bytes && { bytes, type: (await describeImage(bytes)).type };
    },
  };
}

/**
 * A smaller copy of a kept image as WebP, made the first time it is asked for and gone when the image goes.
 * @returns null when there is no such image; the image itself when it is no wider
 */
async function reducedCopy(folder: string, sha256: string, width: ReducedWidth): Promise<Uint8Array | null> {
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
