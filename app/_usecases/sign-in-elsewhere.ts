import type { FieldError } from "#core/field-error";
import { parseEmail } from "#core/members/parse-account";
import { tidyLine } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { admitMember } from "./members/admit-member.ts";
import type { Clock, IdentityElsewhere, Members } from "./ports.ts";

type Needs = { readonly members: Members; readonly clock: Clock };

/** What a provider says of somebody. */
export type ToldElsewhere = IdentityElsewhere & {
  readonly email: string;
  readonly emailVerified: boolean;
  readonly name: string;
};

/**
 * Who signs in at an OpenID Connect provider: known again by the identity there. One that is not known is tied to the
 * account of whoever is signed in here already; else a member is made of it, if the provider has verified the address
 * and nobody here has it. An account is never handed over by its address alone, in neither direction: whoever holds it
 * shows so by signing in first.
 * @param signedIn id of the member in whose session it happens
 * @returns the member's id
 */
export async function signInElsewhere(
  needs: Needs,
  told: ToldElsewhere,
  signedIn: string | null = null,
): Promise<Result<string, FieldError>> {
  const known = await needs.members.byIdentity(told);
  const member = known !== null ? ok(known) : signedIn !== null ? ok(signedIn) : await make(needs, told);
  if (!member.ok) return member;
  const admitted = await admitMember(needs.members, member.value);
  if (!admitted.ok || known !== null) return admitted;
  await needs.members.addIdentity(member.value, { provider: told.provider, subject: told.subject });
  return ok((await needs.members.byIdentity(told)) ?? member.value);
}

async function make(needs: Needs, told: ToldElsewhere): Promise<Result<string, FieldError>> {
  const email = parseEmail(told.email);
  if (!email.ok) return email;
  if (!told.emailVerified) return fail({ field: "email", rule: "email-unverified", received: email.value });
  const made = await needs.members.create({
    name: nameFrom(told.name, email.value),
    email: email.value,
    passwordHash: null,
    about: "",
    at: needs.clock.now(),
  });
  return made === null
    ? fail({ field: "email", rule: "account-here-already", received: email.value })
    : ok(made);
}

/** A name that can be changed later: the provider's, or what stands before the @. */
function nameFrom(name: string, email: string): string {
  const given = [...tidyLine(name)].slice(0, 60).join("");
  return [...given].length >= 2 ? given : (email.split("@")[0] ?? email).padEnd(2, ".");
}
