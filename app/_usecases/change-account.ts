import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { plainPassword } from "#core/members/parse-account";
import { fail, ok, type Result } from "#core/result";
import type { Clock, Members, Passwords, Sessions } from "./ports.ts";
import { requireMember } from "./review/require-member.ts";

type Needs = {
  readonly members: Members;
  readonly passwords: Passwords;
  readonly sessions: Sessions;
  readonly clock: Clock;
};

/** A member says another name, or more of themselves. */
export async function changeProfile(
  needs: Pick<Needs, "members">,
  actor: Actor,
  profile: { readonly name: string; readonly about: string },
): Promise<Result<null, FieldError>> {
  const member = requireMember(actor, "change one's account");
  if (!member.ok) return member;
  await needs.members.update(member.value.id, profile);
  return ok(null);
}

/**
 * A member takes another password, and is signed out everywhere else. Who has one must know it.
 * @param session the one in which it is done
 */
export async function changePassword(
  needs: Needs,
  actor: Actor,
  typed: { readonly current: string; readonly password: string; readonly session: string },
): Promise<Result<null, FieldError>> {
  const member = requireMember(actor, "change one's account");
  if (!member.ok) return member;
  const { id } = member.value;
  const email = (await needs.members.find(id))?.email ?? "";
  const kept = (await needs.members.byEmail(email))?.passwordHash ?? null;
  if (kept !== null && !(await needs.passwords.verify(kept, plainPassword(typed.current))))
    return fail({ field: "current", rule: "password-wrong", received: String([...typed.current].length) });
  await needs.members.update(id, { passwordHash: await needs.passwords.hash(typed.password) });
  await needs.sessions.revokeAll(id, needs.clock.now(), typed.session);
  return ok(null);
}
