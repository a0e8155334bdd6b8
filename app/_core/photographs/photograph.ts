import type { Region } from "./region.ts";

/** One image of one impression of a mark. */
export type Photograph = {
  readonly id: string;
  /** SHA-256 of the stored image, hexadecimal; also its address: /images/<sha256>. */
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
  /** Scale, when known: image pixels to one millimetre on the object. */
  readonly pixelsPerMm: number | null;
  readonly shows: string;
  readonly licence: string;
  readonly credit: string;
  /** Photographs with different numbers show different impressions; all without a number count as one together. */
  readonly impression: number | null;
};
