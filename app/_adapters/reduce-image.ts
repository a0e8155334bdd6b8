import sharp from "sharp";

/** The size of an image in pixels, and its media type. */
export async function describeImage(
  bytes: Uint8Array,
): Promise<{ readonly width: number; readonly height: number; readonly type: string }> {
  const { width, height, format } = await sharp(bytes).metadata();
  return { width, height, type: `image/${format}` };
}

/** The image at a smaller width, as WebP. */
export async function reduceImage(bytes: Uint8Array, width: number): Promise<Uint8Array> {
  return sharp(bytes).resize({ width, withoutEnlargement: true }).webp({ quality: 82 }).toBuffer();
}
