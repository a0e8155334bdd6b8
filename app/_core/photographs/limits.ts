/** What may come in as a photograph. Limits are stated where they are broken. */
export const IMAGE_LIMITS = {
  bytes: 20 * 1024 * 1024,
  pixels: 60_000_000,
  /** Bytes of all photographs that come in one form together. */
  bytesTogether: 60 * 1024 * 1024,
} as const;

/** The widths in pixels at which a smaller copy of an image is offered. */
export const REDUCED_WIDTHS = [320, 640, 1280] as const;
export type ReducedWidth = (typeof REDUCED_WIDTHS)[number];

/** Largest number of an impression. */
export const MOST_IMPRESSIONS = 99;

/** Is the text a SHA-256 in hexadecimal, and so the name of an image? */
export const isSha256 = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);
