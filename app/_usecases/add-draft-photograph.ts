import { MOST_DRAFT_PHOTOGRAPHS } from "#core/drafts/draft";
import type { FieldError } from "#core/field-error";
import { isConfident } from "#core/photographs/proposal";
import { fail, ok, type Result } from "#core/result";
import type { Blobs, Drafts, ImageReader, LookUps, MarkFinder } from "./ports.ts";

type Needs = {
  readonly drafts: Drafts;
  readonly images: ImageReader;
  readonly marks: MarkFinder;
  readonly blobs: Blobs;
  readonly lookUps: LookUps;
};

/**
 * Reads an image into a draft: judged and stripped like every other; nothing is stored of one that is refused. Where
 * its mark is thought to be is proposed as its frame.
 * @returns its SHA-256
 */
export async function addDraftPhotograph(
  { drafts, images, marks, blobs, lookUps }: Needs,
  asked: { readonly id: string; readonly owner: string; readonly bytes: Uint8Array },
): Promise<Result<string, FieldError>> {
  const draft = await drafts.find(asked.id, asked.owner);
  if (!draft || draft.submitted) return fail(unknown(asked.id));
  if (draft.photographs.length >= MOST_DRAFT_PHOTOGRAPHS) return fail(tooMany(draft.photographs.length));
  const read = await images.read(asked.bytes, "reference");
  if (!read.ok) return read;
  const { bytes, width, height } = read.value;
  const [place] = await marks.find(bytes);
  const { sha256, isNew } = await blobs.put(bytes);
  const proposed = place && isConfident(place) ? place.region : null;
  const added = await drafts.addPhotograph(asked.id, asked.owner, { sha256, width, height, proposed });
  if (added) return ok(sha256);
  if (isNew && !(await lookUps.imageInUse(sha256))) await blobs.remove(sha256);
  const now = await drafts.find(asked.id, asked.owner);
  if (!now || now.submitted) return fail(unknown(asked.id));
  return fail(
    now.photographs.some((each) => each.sha256 === sha256)
      ? { field: "photograph", rule: "photograph-twice", received: sha256.slice(0, 12) }
      : tooMany(now.photographs.length),
  );
}

const unknown = (id: string): FieldError => ({ field: "draft", rule: "draft-unknown", received: id });
const tooMany = (count: number): FieldError => ({
  field: "photograph",
  rule: "draft-photographs-most",
  received: String(count),
  params: { most: MOST_DRAFT_PHOTOGRAPHS },
});
