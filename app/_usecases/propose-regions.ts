import type { FieldError } from "#core/field-error";
import { isConfident, type Proposal } from "#core/photographs/proposal";
import { scaleRegion } from "#core/photographs/region";
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
