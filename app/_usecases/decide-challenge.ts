import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { fail, type Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import type { ReviewPolicy } from "#core/review/policy";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";
import { requireMember } from "./review/require-member.ts";
import { whyNotInstead } from "./review/stand-instead.ts";

type Given = Omit<Extract<EntryCommand, { type: "decide a challenge" }>, "type" | "by" | "at" | "policy">;

/** A moderator decides a challenge; what follows from it is carried out in the same step. */
export async function decideChallenge(
  needs: ActNeeds & { readonly policy: ReviewPolicy },
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  const member = requireMember(actor, "decide a challenge");
  if (!member.ok) return member;
  const { policy, trails } = needs;
  const { consequence } = given;
  if (consequence.kind === "superseded") {
    const refused = await whyNotInstead(trails, entry, consequence.entry, "into");
    if (refused) return fail(refused);
  }
  return actOnEntry(needs, actor, "decide a challenge", entry, (by, at) => ({
    type: "decide a challenge",
    by,
    at,
    policy,
    ...given,
  }));
}
