import type { FieldError } from "#core/field-error";
import type { ActingMember, Actor } from "#core/members/member";
import { type Action, may } from "#core/permissions";
import { fail, ok, type Result } from "#core/result";

/** The member who acts; as the error, why they may not: not signed in, suspended, or without the role. */
export function requireMember(actor: Actor, action: Action): Result<ActingMember, FieldError> {
  if (actor.kind !== "member") return fail({ field: "member", rule: "sign-in-first", received: action });
  if (may(actor, action)) return ok(actor);
  return actor.suspended
    ? fail({ field: "member", rule: "member-suspended", received: actor.name })
    : fail({ field: "member", rule: "role-needed", received: actor.roles.join(", ") || "none" });
}
