import { makeSlug } from "#core/entries/make-slug";
import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { fingerprint } from "#core/photographs/fingerprint";
import type { Photograph } from "#core/photographs/photograph";
import { fail, ok, type Result } from "#core/result";
import type { ReviewPolicy } from "#core/review/policy";
import { recordAndSubmit } from "#core/review/record-and-submit";
import type { Submissions, WrittenRevision } from "./ports/review.ts";
import type { Blobs, Clock, Embedder, Embedders, Models, PhotographToRecord, References } from "./ports.ts";
import { describePhotograph, embeddersInUse } from "./recording/describe-photograph.ts";
import { requireMember } from "./review/require-member.ts";

type Needs = {
  readonly submissions: Submissions;
  readonly references: References;
  readonly blobs: Blobs;
  readonly embedders: Embedders;
  readonly models: Models;
  readonly clock: Clock;
  readonly policy: ReviewPolicy;
};

/**
 * A member records a revision, of a new entry or of one that is there, and puts it forward for review in one step.
 * When the entry was revised meanwhile by somebody else, nothing is recorded, and the refusal names the newest
 * revision.
 */
export async function submitRevision(
  needs: Needs,
  actor: Actor,
  given: WrittenRevision,
): Promise<Result<{ slug: string; revision: string; number: number }, readonly FieldError[]>> {
  const member = requireMember(actor, "submit a revision");
  if (!member.ok) return fail([member.error]);
  const by = member.value;
  const slug = given.entry ?? (makeSlug(given.content.title) || "mark");
  const photographs = await ready(needs, slug, given);
  if (!photographs.ok) return fail([photographs.error]);
  const { policy } = needs;
  const at = needs.clock.now().toISOString();
  const { content, parents, summary } = given;
  const recorded = await needs.submissions.record(
    {
      entry: { slug, isNew: given.entry === null },
      content,
      photographs: photographs.value,
      parents,
      authors: [...new Set([by.id, ...given.coAuthors])],
      createdBy: by.name,
      summary,
      at,
    },
    (events, revision) => recordAndSubmit(events, { at, by, revision, policy }),
  );
  return recorded.ok ? recorded : fail([recorded.error]);
}

/** The photographs with what the models in use make of those that are new. */
async function ready(
  needs: Needs,
  entry: string,
  given: WrittenRevision,
): Promise<Result<readonly PhotographToRecord[], FieldError>> {
  const known = given.entry === null ? new Set() : await needs.references.knownPhotographs([entry]);
  const embedders = await embeddersInUse(needs);
  const photographs: PhotographToRecord[] = [];
  for (const photograph of given.photographs) {
    const stated = { ...photograph, entry };
    const vectors = known.has(fingerprint(stated))
      ? null
      : await describe(needs.blobs, embedders, photograph);
    if (vectors === undefined)
      return fail({ field: "photographs", rule: "file-missing", received: photograph.sha256 });
    photographs.push({ ...stated, vectors });
  }
  return ok(photographs);
}

async function describe(blobs: Blobs, embedders: readonly Embedder[], photograph: Omit<Photograph, "id">) {
  const { sha256, width, height, region } = photograph;
  const bytes = await blobs.get(sha256);
  return bytes ? describePhotograph(embedders, { bytes, width, height }, region) : undefined;
}
