/** Where a kind of image says what it is: the offset of some bytes, and the bytes as Latin-1 text. */
type Signature = readonly (readonly [offset: number, text: string])[];

/**
 * How the kinds of image begin that the reference reads.
 * Sources: JPEG ITU-T T.81 B.1; PNG ISO/IEC 15948 5.2; GIF89a 17; WebP RFC 9649 2.4; TIFF 6.0 section 2; AVIF and
 * HEIF ISO/IEC 14496-12 4.3 (`ftyp`, whose brands the server reads).
 */
const SIGNATURES: readonly Signature[] = [
  [[0, "\xff\xd8\xff"]],
  [[0, "\x89PNG\r\n\x1a\n"]],
  [[0, "GIF8"]],
  [
    [0, "RIFF"],
    [8, "WEBP"],
  ],
  [[0, "II*\0"]],
  [[0, "MM\0*"]],
  [[4, "ftyp"]],
];

/** How many bytes {@link beginsLikeImage} needs to see. */
export const IMAGE_START = 16;

/** Do a file's first bytes belong to an image, whatever the file is called? */
export function beginsLikeImage(start: Uint8Array): boolean {
  const text = String.fromCharCode(...start.slice(0, IMAGE_START));
  return SIGNATURES.some((signature) => signature.every(([offset, part]) => text.startsWith(part, offset)));
}
