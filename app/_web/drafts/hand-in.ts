import type { Draft } from "#core/drafts/draft";
import type { ActingMember } from "#core/members/member";
import { submitDraft } from "#usecases/submit-draft";
import { submitRevision } from "#usecases/submit-revision";
import { keepForm } from "../kept-forms.ts";
import type { Live } from "../live.ts";
import { redirect } from "../look-up-answer.ts";
import { wantsJson } from "../words-form.ts";

/** Submits a saved draft to review; what is wrong is shown at its fields, and what came meanwhile beside it. */
export async function handIn(
  request: Request,
  wired: Live,
  member: ActingMember,
  { id, owner }: Draft,
): Promise<Response> {
  const result = await submitDraft(
    { ...wired, submit: (revision) => submitRevision(wired, member, revision) },
    { id, owner, by: member.name },
  );
  const page = `/contribute/${id}`;
  if (result.ok) {
    const { slug, number } = result.value;
    const shown = `/entries/${slug}/revisions/${number}?said=submitted`;
    return wantsJson(request) ? Response.json(result.value) : redirect(shown);
  }
  const meanwhile = result.error.some(({ rule }) => rule === "revised-meanwhile");
  if (wantsJson(request))
    return Response.json({ error: result.error[0], errors: result.error }, { status: meanwhile ? 409 : 422 });
  if (meanwhile) return redirect(`${page}/meanwhile`);
  return redirect(`${page}?form=${keepForm({ errors: result.error, typed: {} })}`);
}
