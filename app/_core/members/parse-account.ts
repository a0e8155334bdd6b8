import { type FieldError, received } from "../field-error.ts";
import { type Typed, TypedReader, tidyLine } from "../questions/typed-text.ts";
import { fail, ok, type Result } from "../result.ts";

export const JOIN_FIELDS = ["name", "email", "password"] as const;
export const PROFILE_FIELDS = ["name", "about_you"] as const;
/** Length is all that is asked of a password. Source: NIST SP 800-63B, section 5.1.1.2. */
export const PASSWORD_LENGTH = { shortest: 12, longest: 200 } as const;

export type Joining = { readonly name: string; readonly email: string; readonly password: string };

/** Reads the form of who wants to become a member; every wrong field is named. */
export function parseJoining(typed: Typed): Result<Joining, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const name = read.line("name", { shortest: 2, longest: 60 });
  const email = parseEmail(typed.email ?? "");
  if (!email.ok) read.errors.push(email.error);
  const password = parsePassword("password", typed.password ?? "");
  if (!password.ok) read.errors.push(password.error);
  return email.ok && password.ok && read.errors.length === 0
    ? ok({ name, email: email.value, password: password.value })
    : fail(read.errors);
}

/** Reads what a member says of themselves. */
export function parseProfile(
  typed: Typed,
): Result<{ readonly name: string; readonly about: string }, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const name = read.line("name", { shortest: 2, longest: 60 });
  const about = read.text("about_you", { longest: 2000 });
  return read.errors.length > 0 ? fail(read.errors) : ok({ name, about });
}

/**
 * An e-mail address in lower case. Only its shape is looked at; whether it is somebody's is known by who proves it.
 * Source: WHATWG HTML, "valid e-mail address", and RFC 5321, 4.5.3.1.3 (254 signs).
 */
export function parseEmail(text: string): Result<string, FieldError> {
  const email = tidyLine(text).toLowerCase();
  const label = "[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?";
  const shape = new RegExp(`^[a-z0-9.!#$%&'*+/=?^_\`{|}~-]{1,64}@${label}(?:\\.${label})*$`);
  if (email.length <= 254 && shape.test(email)) return ok(email);
  return fail({ field: "email", rule: email === "" ? "required" : "email", received: received(email) });
}

/** A new password. What was typed is never repeated, only how long it is. */
export function parsePassword(field: string, text: string): Result<string, FieldError> {
  const password = plainPassword(text);
  const length = [...password].length;
  const { shortest, longest } = PASSWORD_LENGTH;
  if (length >= shortest && length <= longest) return ok(password);
  return fail({ field, rule: "password-length", received: String(length), params: { shortest, longest } });
}

/** One way of writing for signs that can be typed in several. Source: NIST SP 800-63B, section 5.1.1.2 (NFKC). */
export const plainPassword = (text: string): string => text.normalize("NFKC");
