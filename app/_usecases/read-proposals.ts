import type { FieldError } from "#core/field-error";
import { checkRegion, type Region, scaleRegion, wholeOf } from "#core/photographs/region";
import { type LettersProposal, proposeLetters } from "#core/reading/propose-letters";
import { ok, type Result } from "#core/result";
import type { ImageReader, LettersReader } from "./ports.ts";

type Needs = { readonly images: ImageReader; readonly letters: LettersReader };

type Asked = {
  readonly bytes: Uint8Array;
  /** In pixels of the upright image as it came; the whole image when left out. */
  readonly region: Region | null;
};

/**
 * Reads the writing in a photograph's region by machine. What comes of it is proposed, the best first, and entered by
 * nobody but the person who asked; nothing is kept.
 */
export async function readProposals(
  { images, letters }: Needs,
  { bytes, region }: Asked,
): Promise<Result<readonly LettersProposal[], FieldError>> {
  const read = await images.read(bytes, "look-up");
  if (!read.ok) return read;
  const image = read.value;
  const asked = checkRegion(region ?? wholeOf(image.original), image.original);
  if (!asked.ok) return asked;
  const readings = await letters.read(
    image.bytes,
    scaleRegion(asked.value, image.width / image.original.width),
  );
  return readings.ok ? ok(proposeLetters(readings.value)) : readings;
}
