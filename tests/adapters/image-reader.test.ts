import { deflateSync } from "node:zlib";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { createImageReader } from "#adapters/image-reader";
import { IMAGE_LIMITS } from "#core/photographs/limits";

const images = createImageReader();
const picture = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: "#888" } }).composite([
    { input: { create: { width: 10, height: 10, channels: 3, background: "#000" } }, left: 0, top: 0 },
  ]);

const read = async (bytes: Uint8Array, purpose: "look-up" | "reference" = "look-up") => {
  const result = await images.read(bytes, purpose);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};
const refusal = async (bytes: Uint8Array) => {
  const result = await images.read(bytes, "look-up");
  return result.ok ? null : result.error;
};

describe("reading an image", () => {
  it("keeps neither place nor device nor anything else that came along", async () => {
    const exif = {
      IFD0: { Make: "A camera", Copyright: "Somebody" },
      IFD3: { GPSLatitude: "51/1 30/1 0/1", GPSLatitudeRef: "N" },
    };
    const bytes = await picture(200, 100).withExif(exif).jpeg().toBuffer();
    expect((await sharp(bytes).metadata()).exif).toBeDefined();
    for (const purpose of ["look-up", "reference"] as const) {
      const kept = await sharp((await read(bytes, purpose)).bytes).metadata();
      expect([kept.exif, kept.xmp, kept.iptc, kept.icc]).toEqual([
        undefined,
        undefined,
        undefined,
        undefined,
      ]);
    }
  });

  it("turns it upright and tells the upright size", async () => {
    const bytes = await picture(200, 100).withMetadata({ orientation: 6 }).jpeg().toBuffer();
    const image = await read(bytes);
    expect(image).toMatchObject({ width: 100, height: 200, original: { width: 100, height: 200 } });
    // Orientation 6 (EXIF 2.32, tag 0x0112): the stored top-left corner is the upright top-right one.
    const { data, info } = await sharp(image.bytes).greyscale().raw().toBuffer({ resolveWithObject: true });
    expect(data[info.width - 3] ?? 255).toBeLessThan(60);
    expect(data[3] ?? 0).toBeGreaterThan(100);
  });

  it("keeps a clean reference byte for byte, and reduces what is larger than needed", async () => {
    const clean = await picture(300, 200).webp().toBuffer();
    expect(Buffer.from((await read(clean, "reference")).bytes).equals(clean)).toBe(true);
    const large = await read(await picture(5000, 2500).png().toBuffer());
    expect(large).toMatchObject({ width: 2400, height: 1200, original: { width: 5000, height: 2500 } });
  });

  it.each(["jpeg", "png", "webp", "tiff", "avif", "gif"] as const)("reads %s", async (format) => {
    expect(await read(await picture(120, 90).toFormat(format).toBuffer())).toMatchObject({
      width: 120,
      height: 90,
    });
  });
});

describe("refusing a file", () => {
  it("that is empty", async () => {
    expect(await refusal(new Uint8Array())).toMatchObject({ rule: "image-empty", received: "0 bytes" });
  });

  it("that is no image, whatever its name", async () => {
    expect(await refusal(Buffer.from("not a picture at all"))).toMatchObject({
      rule: "image-type",
      received: "text",
    });
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
    expect(await refusal(Buffer.from(svg))).toMatchObject({ rule: "image-type" });
    expect(await refusal(Buffer.from("%PDF-1.7\n"))).toMatchObject({
      rule: "image-type",
      received: "application/pdf",
    });
  });

  it("that is too many bytes", async () => {
    const bytes = Buffer.alloc(IMAGE_LIMITS.bytes + 1);
    expect(await refusal(bytes)).toMatchObject({ rule: "image-bytes", params: { limitMb: 20 } });
  });

  it("that claims more pixels than may be decoded, without decoding them", async () => {
    const begun = performance.now();
    expect(await refusal(claimingPng(60_000, 60_000))).toMatchObject({
      rule: "image-pixels",
      params: { limitMp: 60 },
    });
    expect(performance.now() - begun).toBeLessThan(500);
  });

  it("that is cut short", async () => {
    const whole = await picture(400, 300).jpeg().toBuffer();
    expect(await refusal(whole.subarray(0, whole.length / 2))).toMatchObject({ rule: "image-damaged" });
  });

  it("that is too small to hold a mark", async () => {
    expect(
      await refusal(
        await sharp({ create: { width: 4, height: 40, channels: 3, background: "#000" } })
          .png()
          .toBuffer(),
      ),
    ).toMatchObject({ rule: "image-too-small", received: "4 x 40" });
  });
});

/** A PNG with one pixel of data whose header claims another size. Layout: PNG specification (W3C), section 5. */
function claimingPng(width: number, height: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(Buffer.alloc(4))),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc(body));
  return Buffer.concat([length, body, sum]);
}

/** CRC-32 as the PNG specification's annex D gives it. */
function crc(bytes: Buffer): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let k = 0; k < 8; k++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}
