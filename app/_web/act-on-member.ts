import type { ActingMember } from "#core/members/member";
import { parseStanding, type StandingAct } from "#core/members/parse-standing";
import { changeStanding } from "#usecases/members/change-standing";
import { live } from "./live.ts";
import { done, isToken, readWords, refuse } from "./words-form.ts";

/** Appoints, dismisses, suspends or restores a member as a form asks. */
export async function actOnMember(
  request: Request,
  actor: ActingMember,
  member: string,
  act: StandingAct,
): Promise<Response> {
  if (!isToken(member)) return new Response(null, { status: 404 });
  const page = `/moderation/members?member=${member}`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const typed = { ...form.value, act };
  const asked = parseStanding(act, typed);
  if (!asked.ok) return refuse(request, asked.error, typed, page);
  const changed = await changeStanding(await live(), actor, { member, ...asked.value });
  if (!changed.ok) return refuse(request, [changed.error], typed, page);
  return done(request, { events: changed.value }, `${page}&said=${act}`);
}
