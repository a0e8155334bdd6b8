import { photographField } from "#core/drafts/draft-fields";
import { readRegion } from "#core/drafts/read-photographs";
import { typedOf } from "#core/drafts/tidy-typed";
import type { ActingMember } from "#core/members/member";
import { IMAGE_LIMITS, isSha256 } from "#core/photographs/limits";
import { TypedReader } from "#core/questions/typed-text";
import { addDraftPhotograph } from "#usecases/add-draft-photograph";
import { dropDraft } from "#usecases/drop-draft";
import { findAlike } from "#usecases/find-alike";
import { chooseModel } from "#usecases/look-up-mark";
import { live } from "../live.ts";
import { redirect } from "../look-up-answer.ts";
import { readForm } from "../read-form.ts";
import { refuse, wantsJson } from "../words-form.ts";
import { writer } from "./own-draft.ts";

/** Takes one photograph into a draft. */
export async function takePhotograph(request: Request, id: string, member: ActingMember): Promise<Response> {
  const page = `/contribute/${id}`;
  const wired = await live();
  if (!(await wired.drafts.find(id, member.id))) return new Response(null, { status: 404 });
  const form = await readForm(request, IMAGE_LIMITS.bytes);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const file = form.value.get("photograph");
  if (!(file instanceof File))
    return refuse(request, [{ field: "photograph", rule: "image-missing", received: "" }], {}, page);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const added = await addDraftPhotograph(wired, { id, owner: member.id, bytes });
  if (!added.ok) return refuse(request, [added.error], {}, page);
  return wantsJson(request) ? Response.json({ sha256: added.value }, { status: 201 }) : redirect(page);
}

/** Throws a draft away. */
export async function discardDraft(request: Request, id: string, member: ActingMember): Promise<Response> {
  if (!(await dropDraft(await live(), id, member.id))) return new Response(null, { status: 404 });
  return wantsJson(request) ? Response.json({ id }) : redirect("/contribute?said=discarded");
}

/** The entries nearest to a photograph of a draft, by the frame that the address gives. */
export async function showAlike(request: Request, id: string): Promise<Response> {
  const member = await writer();
  const draft = member && (await (await live()).drafts.find(id, member.id));
  if (!draft) return new Response(null, { status: 404 });
  const query = new URL(request.url).searchParams;
  const sha256 = query.get("photograph") ?? "";
  const photograph = draft.photographs.find((each) => each.sha256 === sha256);
  if (!photograph || !isSha256(sha256)) return new Response(null, { status: 404 });
  const given = (["x", "y", "width", "height", "turn"] as const).flatMap((part) => {
    const value = query.get(part);
    return value === null ? [] : [[photographField(sha256, part), value] as const];
  });
  const typed = given.length > 0 ? Object.fromEntries(given) : typedOf(draft);
  const read = new TypedReader(typed);
  const region = readRegion(read, typed, photograph);
  const [wrong] = read.errors;
  if (wrong) return Response.json({ error: wrong, errors: [wrong] }, { status: 422 });
  const wired = await live();
  if (wired.queue.isFull)
    return Response.json({ error: { field: "request", rule: "busy", received: "" } }, { status: 503 });
  const found = await wired.queue.run(() =>
    findAlike({ ...wired, chosen: () => chooseModel(wired) }, [{ sha256, region }], draft.entry),
  );
  return found.ok
    ? Response.json({ alike: found.value })
    : Response.json({ error: found.error }, { status: 503 });
}
