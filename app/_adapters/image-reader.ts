import { fileTypeFromBuffer } from "file-type";
import sharp, { type Metadata, type Sharp } from "sharp";
import { type FieldError, received } from "#core/field-error";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import { SMALLEST_REGION } from "#core/photographs/region";
import { fail, ok } from "#core/result";
import type { ImageReader, ReadImage } from "../_usecases/ports.ts";

const ACCEPTED: Readonly<Record<string, string>> = {
  "image/jpeg": "JPEG",
  "image/png": "PNG",
  "image/webp": "WebP",
  "image/tiff": "TIFF",
  "image/avif": "AVIF",
  "image/gif": "GIF",
};
const ACCEPTED_WORDS = Object.values(ACCEPTED).join(", ");

/** Longer side kept, in pixels: a look-up is short-lived, a reference is looked at closely. */
const KEPT_SIDE = { "look-up": 2400, reference: 4096 } as const;

// Only the loaders for what is accepted: everything else the library could open is switched off.
sharp.block({ operation: ["VipsForeignLoad"] });
sharp.unblock({
  operation: [
    "VipsForeignLoadJpeg",
    "VipsForeignLoadPng",
    "VipsForeignLoadWebp",
    "VipsForeignLoadTiff",
    "VipsForeignLoadHeif",
    "VipsForeignLoadNsgif",
  ],
});
sharp.cache(false);
// Decoding and writing overlap: a tenth sooner for the same work.
sharp.concurrency(2);

const options = { limitInputPixels: IMAGE_LIMITS.pixels, failOn: "truncated", pages: 1 } as const;

/**
 * Reads images from strangers: judged by their bytes, not their names; turned upright; stripped of all metadata, so
 * that no place or device is kept; written anew unless a reference is already clean.
 */
export function createImageReader(): ImageReader {
  return {
    async read(bytes, purpose) {
      const refusal = await judgeBytes(bytes);
      if (refusal) return fail(refusal);
      try {
        const image = sharp(bytes, options);
        const metadata = await image.metadata();
        const tooLarge = judgeSize(metadata);
        if (tooLarge) return fail(tooLarge);
        if (purpose === "reference" && isClean(metadata)) return ok(await asItIs(image, bytes, metadata));
        return ok(await writeAnew(image, metadata, purpose));
      } catch (error) {
        return fail(explain(error));
      }
    },
  };
}

async function judgeBytes(bytes: Uint8Array): Promise<FieldError | null> {
  if (bytes.byteLength === 0) return { field: "photograph", rule: "image-empty", received: "0 bytes" };
  if (bytes.byteLength > IMAGE_LIMITS.bytes)
    return {
      field: "photograph",
      rule: "image-bytes",
      received: `${(bytes.byteLength / 1024 / 1024).toFixed(1)} MB`,
      params: { limitMb: IMAGE_LIMITS.bytes / 1024 / 1024 },
    };
  const type = await fileTypeFromBuffer(bytes);
  if (type && ACCEPTED[type.mime]) return null;
  const found = type?.mime ?? (looksLikeText(bytes) ? "text" : "an unknown kind of file");
  return { field: "photograph", rule: "image-type", received: found, params: { accepted: ACCEPTED_WORDS } };
}

function judgeSize({ width, height }: Metadata): FieldError | null {
  if (width * height > IMAGE_LIMITS.pixels) return tooManyPixels(`${width} x ${height}`);
  if (Math.min(width, height) < SMALLEST_REGION)
    return {
      field: "photograph",
      rule: "image-too-small",
      received: `${width} x ${height}`,
      params: { smallest: SMALLEST_REGION },
    };
  return null;
}

const tooManyPixels = (size: string): FieldError => ({
  field: "photograph",
  rule: "image-pixels",
  received: size,
  params: { limitMp: IMAGE_LIMITS.pixels / 1_000_000 },
});

function explain(error: unknown): FieldError {
  const message = error instanceof Error ? error.message : String(error);
  if (/pixel limit/i.test(message)) return tooManyPixels("more pixels than that");
  return { field: "photograph", rule: "image-damaged", received: received(message.split("\n")[0] ?? "") };
}

function isClean(m: Metadata): boolean {
  const kept = m.format === "webp" || m.format === "jpeg";
  return (
    kept &&
    (m.orientation ?? 1) === 1 &&
    !m.exif &&
    !m.xmp &&
    !m.iptc &&
    !m.icc &&
    !m.comments?.length &&
    (m.pages ?? 1) === 1 &&
    m.space === "srgb" &&
    !m.hasAlpha &&
    Math.max(m.width, m.height) <= KEPT_SIDE.reference
  );
}

/** Keeps the bytes of a clean reference; decoding it once shows that it is whole. */
async function asItIs(image: Sharp, bytes: Uint8Array, { width, height }: Metadata): Promise<ReadImage> {
  await image.stats();
  return { bytes, width, height, original: { width, height } };
}

async function writeAnew(
  image: Sharp,
  metadata: Metadata,
  purpose: "look-up" | "reference",
): Promise<ReadImage> {
  const side = KEPT_SIDE[purpose];
  // Somebody waits for a look-up, which is soon forgotten: it is made smaller and written in the quicker ways.
  const quick = purpose === "look-up";
  const upright = image
    .autoOrient()
    .resize({
      width: side,
      height: side,
      fit: "inside",
      withoutEnlargement: true,
      kernel: quick ? "cubic" : "lanczos3",
    })
    .flatten({ background: "#ffffff" })
    .toColourspace("srgb");
  const { data, info } = await upright
    .jpeg({ quality: 92, chromaSubsampling: "4:4:4", optimiseCoding: !quick })
    .toBuffer({ resolveWithObject: true });
  const turned = (metadata.orientation ?? 1) >= 5;
  const original = turned
    ? { width: metadata.height, height: metadata.width }
    : { width: metadata.width, height: metadata.height };
  return { bytes: data, width: info.width, height: info.height, original };
}

function looksLikeText(bytes: Uint8Array): boolean {
  return bytes.subarray(0, 512).every((b) => b === 9 || b === 10 || b === 13 || (b >= 32 && b < 127));
}
