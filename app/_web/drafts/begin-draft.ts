import type { ActingMember } from "#core/members/member";
import { startDraft } from "#usecases/start-draft";
import { live } from "../live.ts";
import { redirect } from "../look-up-answer.ts";
import { readWords, refuse, wantsJson } from "../words-form.ts";

/** Begins a draft: of a new entry, or with `entry` and `from` the next revision of one. */
export async function beginDraft(request: Request, member: ActingMember): Promise<Response> {
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, "/contribute");
  const { entry = "", from = "" } = form.value;
  const of = entry === "" ? null : { entry, number: Number(from) };
  const started = await startDraft(await live(), member.id, of);
  if (!started.ok) return refuse(request, [started.error], {}, "/contribute");
  const page = `/contribute/${started.value}`;
  return wantsJson(request) ? Response.json({ id: started.value }, { status: 201 }) : redirect(page);
}
