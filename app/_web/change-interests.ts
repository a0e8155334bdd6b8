import type { ActingMember } from "#core/members/member";
import { parseInterest } from "#core/members/parse-interest";
import { declareInterest, endInterest } from "#usecases/declare-interest";
import { live } from "./live.ts";
import { done, readWords, refuse } from "./words-form.ts";

/** Declares an interest of a member, or ends one. */
export async function changeInterests(request: Request, actor: ActingMember, act: string): Promise<Response> {
  if (act !== "declare" && act !== "end") return new Response(null, { status: 404 });
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, "/account");
  const typed = form.value;
  const wired = await live();
  if (act === "end") {
    const ended = await endInterest(wired, actor, typed.interest ?? "");
    return ended.ok
      ? done(request, {}, "/account?said=end-interest")
      : refuse(request, [ended.error], typed, "/account");
  }
  const interest = parseInterest(typed);
  if (!interest.ok) return refuse(request, interest.error, typed, "/account");
  const declared = await declareInterest(wired, actor, interest.value);
  if (!declared.ok) return refuse(request, [declared.error], typed, "/account");
  return done(request, {}, "/account?said=declare");
}
