import type { FieldError } from "#core/field-error";
import { framed, isConfident, type Proposal } from "#core/photographs/proposal";
import { type Region, scaleRegion } from "#core/photographs/region";
import { ok, type Result } from "#core/result";
import type { ImageReader, MarkFinder } from "./ports.ts";

type Needs = { readonly images: ImageReader; readonly marks: MarkFinder };

/** Where the mark may be in a photograph, best first. */
export type ProposedRegions = {
  /** The upright photograph, in whose pixels the regions are. */
  readonly width: number;
  readonly height: number;
  readonly proposals: readonly Proposal[];
  /** Is the first proposal likelier right than wrong? */
  readonly confident: boolean;
};

/** Proposes where the mark is in a photograph; nothing is kept. */
export async function proposeRegions(
  { images, marks }: Needs,
  bytes: Uint8Array,
): Promise<Result<ProposedRegions, FieldError>> {
  const read = await images.read(bytes, "look-up");
  if (!read.ok) return read;
  const { original, width } = read.value;
  const found = await marks.find(read.value.bytes);
  const proposals = found.map(({ region, confidence }) => ({
    region: scaleRegion(region, original.width / width),
    confidence,
  }));
  const [first] = proposals;
  return ok({ ...original, proposals, confident: first !== undefined && isConfident(first) });
}

/**
 * The region that stands in for one that nobody drew, in pixels of the image as it is kept; null when it is not clear
 * where the mark is.
 */
export async function regionInstead(
  marks: MarkFinder,
  image: { readonly bytes: Uint8Array; readonly width: number; readonly height: number },
): Promise<Region | null> {
  const [first] = await marks.find(image.bytes);
  return first && isConfident(first) ? framed(first.region, image) : null;
}
