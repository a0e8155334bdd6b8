import type { FieldError } from "#core/field-error";
import type { ActingMember, Actor } from "#core/members/member";
import { type Action, may } from "#core/permissions";
import { fail, ok, type Result } from "#core/result";

/** The member who acts; as the error, why they may not: not signed in, suspended, or without the role. */
export function requireMember(actor: Actor, action: Action): Result<ActingMember, FieldError> {
  const refuse = (rule: string) => fail({ field: "account", rule, received: action });
  if (actor.kind !== "member") return refuse("sign-in-first");
  if (may(actor, action)) return ok(actor);
  return refuse(actor.suspended ? "suspended" : "role-lacking");
}
