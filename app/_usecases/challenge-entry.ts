import type { Citation } from "#core/entries/citation";
import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { fail, ok, type Result } from "#core/result";
import type { Claim } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import type { Blobs, ImageReader, LookUps, ReadImage } from "./ports.ts";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";
import { requireMember } from "./review/require-member.ts";

type Needs = ActNeeds & {
  readonly images: ImageReader;
  readonly blobs: Blobs;
  readonly lookUps: LookUps;
};

/** A photograph that came with a challenge, as it was sent. */
export type EvidencePhotograph = {
  readonly bytes: Uint8Array;
  readonly credit: string;
  readonly licence: string;
};

/**
 * A member challenges a verified revision. Every photograph is judged before any is kept, and none stays when the
 * challenge is refused.
 */
export async function challengeEntry(
  needs: Needs,
  actor: Actor,
  entry: string,
  given: {
    readonly challenge: string;
    readonly revision: string;
    readonly claim: Claim;
    readonly text: string;
    readonly citations: readonly Citation[];
    readonly photographs: readonly EvidencePhotograph[];
  },
): Promise<Result<EntryHistory, FieldError>> {
  const member = requireMember(actor, "challenge");
  if (!member.ok) return member;
  const read = await readAll(needs.images, given.photographs);
  if (!read.ok) return read;
  const { text, citations, photographs: _, ...rest } = given;
  const kept = await Promise.all(read.value.map(({ bytes }) => needs.blobs.put(bytes)));
  const photographs = given.photographs.map(({ credit, licence }, i) => ({
    sha256: kept[i]?.sha256 ?? "",
    credit,
    licence,
  }));
  const done = await actOnEntry(needs, actor, "challenge", entry, (by, at) => ({
    type: "challenge",
    by,
    at,
    ...rest,
    evidence: { text, citations, photographs },
  }));
  for (const { sha256, isNew } of kept)
    if (isNew && !(await needs.lookUps.imageInUse(sha256))) await needs.blobs.remove(sha256);
  return done;
}

async function readAll(
  images: ImageReader,
  photographs: readonly EvidencePhotograph[],
): Promise<Result<readonly ReadImage[], FieldError>> {
  const read: ReadImage[] = [];
  for (const { bytes } of photographs) {
    const image = await images.read(bytes, "reference");
    if (!image.ok) return fail(image.error);
    read.push(image.value);
  }
  return ok(read);
}
