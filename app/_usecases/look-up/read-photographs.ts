import type { FieldError } from "#core/field-error";
import { checkPhotographCount, numberMarks } from "#core/look-ups/asked-photographs";
import { checkRegion, type Region, scaleRegion } from "#core/photographs/region";
import { fail, ok, type Result } from "#core/result";
import type { ImageReader, ReadImage } from "../ports.ts";

/** A photograph to look up. */
export type PhotographToLookUp = {
  readonly bytes: Uint8Array;
  /** In pixels of the upright image as it came; when null, all of it and the place where the mark is found to be. */
  readonly region: Region | null;
  /** Photographs of one mark have the same number; which numbers does not matter. */
  readonly mark: number;
};

/** A photograph that was read: its region is in pixels of the image as it is kept, null when nobody framed the mark. */
type ReadPhotograph = {
  readonly image: ReadImage;
  readonly region: Region | null;
  readonly mark: number;
};

/** Reads every photograph and its region; an error says which of several it is about. */
export async function readPhotographs(
  images: ImageReader,
  photographs: readonly PhotographToLookUp[],
): Promise<Result<readonly ReadPhotograph[], FieldError>> {
  const count = checkPhotographCount(photographs.length);
  if (!count.ok) return count;
  const read: ReadPhotograph[] = [];
  for (const [i, { bytes, region, mark }] of numberMarks(photographs).entries()) {
    const refuse = (error: FieldError) =>
      fail(
        photographs.length === 1
          ? error
          : {
              ...error,
              received: `photograph ${i + 1}: ${error.received}`,
              params: { ...error.params, photograph: i + 1 },
            },
      );
    const image = await images.read(bytes, "look-up");
    if (!image.ok) return refuse(image.error);
    const { width, original } = image.value;
    const asked = region && checkRegion(region, original);
    if (asked && !asked.ok) return refuse(asked.error);
    const drawn = asked && scaleRegion(asked.value, width / original.width);
    read.push({ image: image.value, region: drawn, mark });
  }
  return ok(read);
}
