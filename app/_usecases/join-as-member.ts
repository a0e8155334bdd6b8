import type { FieldError } from "#core/field-error";
import type { Joining } from "#core/members/parse-account";
import { fail, ok, type Result } from "#core/result";
import type { Clock, Members, Passwords } from "./ports.ts";

type Needs = { readonly members: Members; readonly passwords: Passwords; readonly clock: Clock };

/** Somebody becomes a member, a contributor at first. @returns the id */
export async function joinAsMember(
  needs: Needs,
  { name, email, password }: Joining,
): Promise<Result<string, FieldError>> {
  const passwordHash = await needs.passwords.hash(password);
  const id = await needs.members.create({ name, email, passwordHash, about: "", at: needs.clock.now() });
  return id === null ? fail({ field: "email", rule: "email-taken", received: email }) : ok(id);
}
