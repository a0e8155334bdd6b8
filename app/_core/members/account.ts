import type { Field } from "../entries/vocabulary.ts";
import type { By } from "../review/entry-event.ts";
import type { ActingMember, Interest, Role } from "./member.ts";

/** A declared interest as it is kept: never deleted, and over when it was ended. */
export type KeptInterest = Interest & {
  readonly id: string;
  readonly declaredAt: string;
  readonly endedAt: string | null;
};

/** What a member may do here. */
export type Standing = {
  readonly isModerator: boolean;
  readonly isAdministrator: boolean;
  readonly fields: readonly Field[];
  readonly suspendedAt: string | null;
};

/** A member as everybody may know them. */
export type Member = Standing & {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly createdAt: string;
  /** Ended ones too, oldest first. */
  readonly interests: readonly KeptInterest[];
};

/** The same, with what concerns the member alone. */
export type Account = Member & { readonly email: string; readonly hasPassword: boolean };

/** One browser in which a member is signed in; the id is no key. */
export type OpenSession = {
  readonly id: string;
  readonly createdAt: string;
  readonly lastSeenAt: string;
  readonly userAgent: string;
};

/** An act of moderation that concerns a member. */
export type MemberEvent = {
  readonly at: string;
  readonly by: By;
  readonly member: { readonly id: string; readonly name: string };
  readonly reason: string;
} & (
  | { readonly type: "reviewer appointed"; readonly fields: readonly Field[] }
  | { readonly type: "moderator appointed" }
  | { readonly type: "administrator appointed" }
  | { readonly type: "appointment ended"; readonly role: "reviewer" | "moderator" }
  | { readonly type: "member suspended" }
  | { readonly type: "member restored" }
);

export function rolesOf({ isModerator, isAdministrator, fields }: Standing): readonly Role[] {
  return [
    "contributor",
    ...(fields.length > 0 ? (["reviewer"] as const) : []),
    ...(isModerator ? (["moderator"] as const) : []),
    ...(isAdministrator ? (["administrator"] as const) : []),
  ];
}

/** The member as somebody who acts: with the interests that are not ended. */
export function actingAs(member: Member): ActingMember {
  return {
    kind: "member",
    id: member.id,
    name: member.name,
    roles: rolesOf(member),
    fields: member.fields,
    interests: member.interests.filter(({ endedAt }) => endedAt === null),
    suspended: member.suspendedAt !== null,
  };
}
