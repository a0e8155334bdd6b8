import { randomUUID } from "node:crypto";
import type { Field } from "#core/entries/vocabulary";
import type { ActingMember, Role } from "#core/members/member";

/** A member who acts in a test, with a name of their own. */
export function memberNamed(
  name: string,
  roles: readonly Role[] = ["contributor"],
  fields: readonly Field[] = [],
): ActingMember {
  return { kind: "member", id: randomUUID(), name, roles, fields, interests: [], suspended: false };
}

export const reviewerNamed = (name: string, field: Field = "metalwork"): ActingMember =>
  memberNamed(name, ["contributor", "reviewer"], [field]);

export const moderatorNamed = (name: string): ActingMember => memberNamed(name, ["contributor", "moderator"]);
