import type { FieldError } from "#core/field-error";
import { parseDeclineReason, parseProposal } from "#core/questions/parse-proposal";
import type { Typed } from "#core/questions/typed-text";
import { ok, type Result } from "#core/result";
import { type Change, changeQuestion } from "#usecases/change-question";
import { signedInMember } from "./actor.ts";
import { askerKey } from "./asker-keys.ts";
import { countClient } from "./client-pace.ts";
import { live } from "./live.ts";
import { done, isToken, readWords, refuse } from "./words-form.ts";

const ACTS = ["propose", "accept", "take-back", "decline", "withdraw"] as const;
type Act = (typeof ACTS)[number];

/** Does to a question what a form asks for. */
export async function actOnQuestion(request: Request, id: string, act: string): Promise<Response> {
  if (!isToken(id)) return new Response(null, { status: 404 });
  const known = ACTS.find((each) => each === act);
  if (!known) return new Response(null, { status: 404 });
  const page = known === "propose" ? `/questions/${id}/propose` : `/questions/${id}`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const typed = { ...form.value, act: known };
  const change = changeFrom(known, typed);
  if (!change.ok) return refuse(request, change.error, typed, page);
  const tooSoon = known === "propose" ? countClient(request, "propose") : null;
  if (tooSoon) return refuse(request, [tooSoon], typed, page);
  const result = await changeQuestion(
    await live(),
    id,
    await askerKey(id),
    change.value,
    await signedInMember(),
  );
  if (!result.ok) return refuse(request, [result.error], typed, page);
  return done(request, { id }, `/questions/${id}?said=${known}`);
}

function changeFrom(act: Act, typed: Typed): Result<Change, readonly FieldError[]> {
  const proposal = Number(typed.proposal);
  switch (act) {
    case "propose": {
      const proposed = parseProposal(typed);
      return proposed.ok ? ok({ type: "propose", ...proposed.value }) : proposed;
    }
    case "accept":
      return ok({ type: "accept", proposal });
    case "take-back":
      return ok({ type: "take acceptance back", proposal });
    case "decline": {
      const reason = parseDeclineReason(typed);
      return reason.ok ? ok({ type: "decline", proposal, reason: reason.value }) : reason;
    }
    case "withdraw":
      return ok({ type: "withdraw" });
  }
}
