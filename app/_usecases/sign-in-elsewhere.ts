import type { FieldError } from "#core/field-error";
import { parseEmail } from "#core/members/parse-account";
import { tidyLine } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { admitMember } from "./members/admit-member.ts";
import type { Clock, IdentityElsewhere, Members, Sessions } from "./ports.ts";

type Needs = { readonly members: Members; readonly sessions: Sessions; readonly clock: Clock };

/** What a provider says of somebody. */
export type ToldElsewhere = IdentityElsewhere & {
  readonly email: string;
  readonly emailVerified: boolean;
  readonly name: string;
};

/**
 * Who signs in at an OpenID Connect provider: known again by the identity there; the first time, tied to the member
 * with the same e-mail address, or made one, and only if the provider has verified the address.
 * @returns the member's id
 */
export async function signInElsewhere(
  needs: Needs,
  told: ToldElsewhere,
): Promise<Result<string, FieldError>> {
  const known = await needs.members.byIdentity(told);
  const member = known === null ? await tie(needs, told) : ok(known);
  return member.ok ? admitMember(needs.members, member.value) : member;
}

async function tie(needs: Needs, told: ToldElsewhere): Promise<Result<string, FieldError>> {
  const email = parseEmail(told.email);
  if (!email.ok) return email;
  if (!told.emailVerified) return fail({ field: "email", rule: "email-unverified", received: email.value });
  const at = needs.clock.now();
  const made = await needs.members.create({
    name: nameFrom(told.name, email.value),
    email: email.value,
    passwordHash: null,
    about: "",
    at,
  });
  const id = made ?? (await needs.members.byEmail(email.value))?.id;
  if (id === undefined) throw new Error("A member was there and is gone.");
  if (made === null) {
    // Nobody has shown so far that the address was theirs: whoever made the account with it is signed out of it.
    await needs.members.update(id, { passwordHash: null });
    await needs.sessions.revokeAll(id, at);
  }
  await needs.members.addIdentity(id, { provider: told.provider, subject: told.subject });
  return ok((await needs.members.byIdentity(told)) ?? id);
}

/** A name that can be changed later: the provider's, or what stands before the @. */
function nameFrom(name: string, email: string): string {
  const given = [...tidyLine(name)].slice(0, 60).join("");
  return [...given].length >= 2 ? given : (email.split("@")[0] ?? email).padEnd(2, ".");
}
