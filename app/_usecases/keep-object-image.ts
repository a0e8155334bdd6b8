import type { FieldError } from "#core/field-error";
import { type FileImage, MOST_FILE_IMAGES } from "#core/object-files/kept-file";
import { fail, ok, type Result } from "#core/result";
import { findFileToChange } from "./object-files/find-object-file.ts";
import type { ObjectFiles, ObjectImages } from "./ports/object-files.ts";
import type { Blobs, Clock, ImageReader, LookUps } from "./ports.ts";

type Needs = {
  readonly objectFiles: ObjectFiles;
  readonly objectImages: ObjectImages;
  readonly images: ImageReader;
  readonly blobs: Blobs;
  readonly lookUps: LookUps;
  readonly clock: Clock;
};

/**
 * Takes an image into a file: judged by its bytes, stripped of everything but the picture, kept once however often it
 * is sent. Nothing stays of one that is refused.
 */
export async function keepObjectImage(
  needs: Needs,
  asked: { readonly id: string; readonly member: string; readonly bytes: Uint8Array },
): Promise<Result<FileImage, FieldError>> {
  const found = await findFileToChange(needs, asked.id, asked.member);
  if (!found) return fail({ field: "file", rule: "object-file-unknown", received: asked.id });
  const read = await needs.images.read(asked.bytes, "reference");
  if (!read.ok) return read;
  const { bytes, width, height } = read.value;
  const { sha256, isNew } = await needs.blobs.put(bytes);
  const image = { sha256, width, height };
  if (await needs.objectImages.add(asked.id, image, needs.clock.now())) return ok(image);
  if (isNew && !(await needs.lookUps.imageInUse(sha256))) await needs.blobs.remove(sha256);
  return fail({
    field: "photograph",
    rule: "object-images-most",
    received: String(MOST_FILE_IMAGES + 1),
    params: { most: MOST_FILE_IMAGES },
  });
}
