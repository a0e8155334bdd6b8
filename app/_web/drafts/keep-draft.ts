import type { Draft } from "#core/drafts/draft";
import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { addDraftPhotograph } from "#usecases/add-draft-photograph";
import { dropDraftPhotograph } from "#usecases/drop-draft";
import { keepForm } from "../kept-forms.ts";
import { type Live, live } from "../live.ts";
import { redirect } from "../look-up-answer.ts";
import { refuse, wantsJson } from "../words-form.ts";
import { handIn } from "./hand-in.ts";
import { type DraftForm, readDraftForm } from "./read-draft-form.ts";

/**
 * Saves a draft, and then does what the button that was pressed asks for. A form that was made from an older version
 * is not saved over the newer one: both are laid beside each other.
 */
export async function keepDraft(request: Request, id: string, member: ActingMember): Promise<Response> {
  const page = `/contribute/${id}`;
  const wired = await live();
  const draft = await wired.drafts.find(id, member.id);
  if (!draft || draft.submitted) return new Response(null, { status: 404 });
  const form = await readDraftForm(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const { version, typed } = form.value;
  const had = Number.isInteger(version) ? version : 0;
  const saved = await wired.drafts.save(id, member.id, had, { typed });
  if (!saved) return older(request, draft, form.value);
  const refused = await takeFiles(wired, saved, form.value.files);
  if (refused) return refuse(request, [refused], {}, page);
  return actOn(request, { wired, member, saved, act: form.value.act });
}

/** Somebody, in another window perhaps, saved it meanwhile. */
function older(request: Request, { id, version }: Draft, { typed, base }: DraftForm): Response {
  const error: FieldError = { field: "draft", rule: "draft-newer", received: String(version) };
  if (wantsJson(request)) return Response.json({ error, errors: [error] }, { status: 409 });
  const kept = keepForm({ errors: [], typed: { mine: JSON.stringify(typed), base: JSON.stringify(base) } });
  return redirect(`/contribute/${id}/differing?form=${kept}`);
}

/** Without scripts files come with the form; the first that is refused says why, those before it are in. */
async function takeFiles(
  wired: Live,
  { id, owner }: Draft,
  files: readonly File[],
): Promise<FieldError | null> {
  for (const file of files) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const added = await addDraftPhotograph(wired, { id, owner, bytes });
    if (!added.ok) return { ...added.error, received: `${file.name}, ${added.error.received}` };
  }
  return null;
}

type Acting = {
  readonly wired: Live;
  readonly member: ActingMember;
  readonly saved: Draft;
  readonly act: string;
};

async function actOn(request: Request, { wired, member, saved, act }: Acting): Promise<Response> {
  const { id, owner, version, updatedAt } = saved;
  const page = `/contribute/${id}`;
  const done = (to: string) =>
    wantsJson(request)
      ? Response.json({ version, savedAt: updatedAt.toISOString(), typed: saved.typed })
      : redirect(to);
  const [what, sha256 = ""] = act.split(":");
  switch (what) {
    case "submit":
      return handIn(request, wired, member, saved);
    case "preview":
      return done(`${page}/preview`);
    case "citation":
      return done(`${page}?more=citation#citations`);
    case "remove":
      await dropDraftPhotograph(wired, { id, owner, sha256 });
      return done(`${page}?said=removed#photographs`);
    case "earlier":
    case "later": {
      await wired.drafts.movePhotograph(id, owner, sha256, what === "earlier" ? "first" : "last");
      const now = (await wired.drafts.find(id, owner))?.photographs ?? [];
      const place = now.findIndex((each) => each.sha256 === sha256) + 1;
      return done(`${page}?said=moved#photograph-${place}`);
    }
    default:
      return done(`${page}?said=saved`);
  }
}
