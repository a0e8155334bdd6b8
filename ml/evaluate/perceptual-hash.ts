import phash from "sharp-phash";

/** Pixels of a side of the picture handed over; the hash itself looks at 32 x 32. */
export const HASH_SIDE = 128;

/**
 * A 64-bit perceptual hash (the signs of the lowest 8 x 8 cosine coefficients but the constant ones, against
 * their mean), by the package sharp-phash, as a vector of 64 numbers of +-1/8: its dot product with another is
 * 1 - 2 d / 64 at a Hamming distance of d.
 * @param picture 128 x 128 standardised grey values
 */
export async function hashPicture(picture: Float32Array): Promise<Float32Array> {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of picture) {
    lowest = Math.min(lowest, value);
    highest = Math.max(highest, value);
  }
  const scale = 255 / Math.max(highest - lowest, 1e-6);
  const bytes = Uint8Array.from(picture, (value) => Math.round((value - lowest) * scale));
  const bits = await phash(bytes, { raw: { width: HASH_SIDE, height: HASH_SIDE, channels: 1 } });
  return Float32Array.from(bits, (bit) => (bit === "1" ? 1 / 8 : -1 / 8));
}
