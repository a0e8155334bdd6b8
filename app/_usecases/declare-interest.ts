import type { FieldError } from "#core/field-error";
import type { Actor, Interest } from "#core/members/member";
import { fail, ok, type Result } from "#core/result";
import type { Clock, Entries, Interests, Makers } from "./ports.ts";
import { requireMember } from "./review/require-member.ts";

type Needs = {
  readonly interests: Interests;
  readonly makers: Makers;
  readonly entries: Entries;
  readonly clock: Clock;
};

/** A member declares a stake in a maker or an entry that is here. */
export async function declareInterest(
  needs: Needs,
  actor: Actor,
  interest: Interest,
): Promise<Result<null, FieldError>> {
  const member = requireMember(actor, "declare an interest");
  if (!member.ok) return member;
  const { kind, slug } = interest.in;
  const found = kind === "maker" ? await needs.makers.bySlug(slug) : await needs.entries.bySlug(slug);
  if (!found) return fail({ field: kind, rule: `${kind}-not-here`, received: slug });
  await needs.interests.declare(member.value.id, interest, needs.clock.now());
  return ok(null);
}

/** A member has that stake no longer; that it was declared stays on record. */
export async function endInterest(
  needs: Pick<Needs, "interests" | "clock">,
  actor: Actor,
  id: string,
): Promise<Result<null, FieldError>> {
  const member = requireMember(actor, "declare an interest");
  if (!member.ok) return member;
  const ended = await needs.interests.end(member.value.id, id, needs.clock.now());
  return ended ? ok(null) : fail({ field: "interest", rule: "interest-unknown", received: id });
}
