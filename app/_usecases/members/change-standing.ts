import type { FieldError } from "#core/field-error";
import type { MemberEvent } from "#core/members/account";
import {
  type Appointer,
  actionOf,
  decideStanding,
  type StandingCommand,
  standingAfter,
} from "#core/members/decide-standing";
import { fail, ok, type Result } from "#core/result";
import type { Clock, Members, Sessions } from "../ports.ts";
import { requireMember } from "../review/require-member.ts";

type Needs = { readonly members: Members; readonly sessions: Sessions; readonly clock: Clock };

/**
 * Appoints, dismisses, suspends or restores a member, and writes down who did it and why. Who is suspended is signed
 * out everywhere.
 */
export async function changeStanding(
  needs: Needs,
  by: Appointer,
  asked: { readonly member: string; readonly command: StandingCommand; readonly reason: string },
): Promise<Result<readonly MemberEvent[], FieldError>> {
  const { command, reason } = asked;
  const action = actionOf(command);
  if (by.kind === "member" && action !== null) {
    const allowed = requireMember(by, action);
    if (!allowed.ok) return allowed;
  }
  const now = needs.clock.now();
  const acted = await needs.members.act(asked.member, (member) => {
    const decided = decideStanding(member, by, command, reason, now.toISOString());
    if (!decided.ok) return decided;
    return ok({ events: decided.value, after: standingAfter(member, decided.value) });
  });
  if (acted === null) return fail({ field: "whom", rule: "member-unknown", received: asked.member });
  if (acted.ok && acted.value.some(({ type }) => type === "member suspended"))
    await needs.sessions.revokeAll(asked.member, now);
  return acted;
}
