import type { Draft } from "#core/drafts/draft";
import { type ReadDraft, readDraft } from "#core/drafts/read-draft";
import { typedOf } from "#core/drafts/tidy-typed";
import type { FieldError } from "#core/field-error";
import { makerFromColumns } from "#core/import/maker-from-columns";
import { fail, ok, type Result } from "#core/result";
import type { ReviewPolicy } from "#core/review/policy";
import { findCoAuthors } from "./members/find-co-authors.ts";
import type { WrittenRevision } from "./ports/review.ts";
import type { Clock, Drafts, Members, References } from "./ports.ts";

type Needs = {
  readonly drafts: Drafts;
  readonly references: References;
  readonly members: Members;
  readonly clock: Clock;
  readonly policy: ReviewPolicy;
  /** Records the revision and submits it to review. */
  readonly submit: (
    revision: WrittenRevision,
  ) => Promise<Result<{ readonly slug: string; readonly number: number }, readonly FieldError[]>>;
};

/**
 * Submits a draft to review, when it has everything that a review asks for. Submitting it twice gives what came of it
 * the first time.
 * @param by the name under which a new maker is recorded
 */
export async function submitDraft(
  needs: Needs,
  asked: { readonly id: string; readonly owner: string; readonly by: string },
): Promise<Result<{ readonly slug: string; readonly number: number }, readonly FieldError[]>> {
  const draft = await needs.drafts.find(asked.id, asked.owner);
  if (!draft) return fail([{ field: "draft", rule: "draft-unknown", received: asked.id }]);
  if (draft.submitted) return ok(draft.submitted);
  const read = readDraft(typedOf(draft), draft.photographs, draft.entry !== null);
  const coAuthors = await findCoAuthors(needs.members, read.coAuthors);
  const unknown = await unknownIn(needs.references, draft, read);
  const errors = [...read.errors, ...unknown, ...(coAuthors.ok ? [] : coAuthors.error)];
  if (errors.length > 0 || !coAuthors.ok) return fail(errors);
  if (read.newMaker) {
    const maker = makerFromColumns(read.newMaker);
    if (!maker.ok) return maker;
    const [at, { policy }] = [needs.clock.now().toISOString(), needs];
    const makers = [maker.value];
    const recorded = await needs.references.record({
      makers,
      entries: [],
      photographs: [],
      by: asked.by,
      at,
      policy,
    });
    if (!recorded.ok) return fail([recorded.error]);
  }
  const submitted = await needs.submit({
    entry: draft.entry,
    content: read.content,
    photographs: read.photographs,
    parents: draft.parents,
    summary: read.summary,
    coAuthors: coAuthors.value,
  });
  if (!submitted.ok) return submitted;
  const { slug, number } = submitted.value;
  await needs.drafts.end(asked.id, asked.owner, { slug, number });
  return ok({ slug, number });
}

/** Makers and entries that it names and that are not here, and a new maker who is. */
async function unknownIn(
  references: References,
  draft: Draft,
  { content, newMaker }: ReadDraft,
): Promise<readonly FieldError[]> {
  const [makers, entries] = await Promise.all([
    references.knownMakers(content.maker === null ? [] : [content.maker]),
    references.knownEntries(content.relations.map(({ entry }) => entry)),
  ]);
  const errors: FieldError[] = [];
  if (newMaker && makers.has(newMaker.key))
    errors.push({ field: "new_maker", rule: "maker-here-already", received: newMaker.name });
  if (!newMaker && content.maker !== null && !makers.has(content.maker))
    errors.push({ field: "maker", rule: "maker-unknown", received: content.maker });
  for (const { kind, entry } of content.relations) {
    const field = kind.replace(" ", "_");
    if (!entries.has(entry)) errors.push({ field, rule: "entry-not-here", received: entry });
    if (entry === draft.entry) errors.push({ field, rule: "relation-to-itself", received: entry });
  }
  return errors;
}
