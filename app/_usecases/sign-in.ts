import type { FieldError } from "#core/field-error";
import { parseEmail, plainPassword } from "#core/members/parse-account";
import { SIGN_IN_WINDOW_MS, signInTooOften } from "#core/members/sign-in-pace";
import { fail, type Result } from "#core/result";
import { admitMember } from "./members/admit-member.ts";
import type { Clock, Members, Passwords, SignInAttempts } from "./ports.ts";

type Needs = {
  readonly members: Members;
  readonly passwords: Passwords;
  readonly attempts: SignInAttempts;
  readonly clock: Clock;
};

/**
 * Who signs in by e-mail address and password. An unknown address and a wrong password have one answer, and take as
 * long.
 * @param client who sends it, as nearly as can be told
 * @returns the member's id
 */
export async function signIn(
  needs: Needs,
  typed: { readonly email: string; readonly password: string; readonly client: string },
): Promise<Result<string, FieldError>> {
  const parsed = parseEmail(typed.email);
  if (!parsed.ok) return parsed;
  const email = parsed.value;
  if (typed.password === "") return fail({ field: "password", rule: "required", received: "" });
  const at = needs.clock.now();
  const attempt = await needs.attempts.begin(
    { email, client: typed.client, at },
    new Date(at.getTime() - SIGN_IN_WINDOW_MS),
  );
  const tooOften = signInTooOften(attempt.byEmail, attempt.byClient, at.getTime(), email);
  if (tooOften) {
    // What is refused unjudged is no failure: otherwise nobody could wait it out.
    await needs.attempts.forget(attempt.id);
    return fail(tooOften);
  }
  const found = await needs.members.byEmail(email);
  const right = await needs.passwords.verify(found?.passwordHash ?? null, plainPassword(typed.password));
  if (!found || !right) return fail({ field: "email", rule: "sign-in-wrong", received: email });
  await needs.attempts.forget(attempt.id);
  return admitMember(needs.members, found.id);
}
