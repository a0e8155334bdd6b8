import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createBlobs, createPictures } from "#adapters/blobs";

describe("images on disk", () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "countermark-blobs-"));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));
  const files = async () =>
    (await readdir(folder, { recursive: true, withFileTypes: true })).filter((e) => e.isFile());
  const widthOf = async (sha256: string, width: 320 | 1280) => {
    const shown = await createPictures(folder).show(sha256, width);
    return (await sharp(shown?.bytes).metadata()).width;
  };
  const picture = (width: number) =>
    sharp({ create: { width, height: 100, channels: 3, background: "#777" } })
      .jpeg()
      .toBuffer();

  it("are named by the SHA-256 of their bytes and kept once", async () => {
    const blobs = createBlobs(folder);
    // SHA-256 of "abc": NIST FIPS 180-2, appendix B.1.
    const sha256 = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    expect(await blobs.put(Buffer.from("abc"))).toEqual({ sha256, isNew: true });
    expect(await blobs.put(Buffer.from("abc"))).toEqual({ sha256, isNew: false });
    expect(await files()).toHaveLength(1);
    expect(Buffer.from((await blobs.get(sha256)) ?? []).toString()).toBe("abc");
  });

  it("are never reached by another name", async () => {
    const blobs = createBlobs(folder);
    expect(await blobs.get("../../etc/passwd")).toBeNull();
    await expect(blobs.remove("../x")).rejects.toThrow(/64 hexadecimal digits/);
  });

  it("are offered smaller, never larger, and take their smaller copies with them", async () => {
    const blobs = createBlobs(folder);
    const { sha256 } = await blobs.put(await picture(900));
    expect(await widthOf(sha256, 320)).toBe(320);
    expect(await widthOf(sha256, 1280)).toBe(900);
    expect(await files()).toHaveLength(2);
    await blobs.remove(sha256);
    expect(await files()).toHaveLength(0);
    expect(await createPictures(folder).show(sha256, 320)).toBeNull();
  });
});
