import { type FieldError, received } from "../field-error.ts";
import type { ActingMember } from "../members/member.ts";
import { type Action, may } from "../permissions.ts";
import { fail, ok, type Result } from "../result.ts";
import type { By, EntryEvent } from "./entry-event.ts";
import type { EntryHistory } from "./entry-history.ts";

export type Decision = Result<readonly EntryEvent[], FieldError>;

/** It is so already. */
export const nothing: Decision = ok([]);

export function refuse(
  field: string,
  rule: string,
  value: string,
  params?: FieldError["params"],
): Result<never, FieldError> {
  return fail({ field, rule, received: received(value), ...(params ? { params } : {}) });
}

/** Fewest and most characters of what is written in a review. The fewest of a vote's reason are the policy's. */
export const LENGTHS = {
  answer: 10,
  evidence: 20,
  decision: 50,
  appeal: 20,
  appealVote: 50,
  act: 10,
  longest: 5000,
} as const;

/** Why a text is too short or too long, when it is. */
export function badText(field: string, text: string, shortest: number): Result<never, FieldError> | null {
  const length = [...text.trim()].length;
  if (length < shortest) return refuse(field, "text-shortest", text, { shortest, length });
  if (length > LENGTHS.longest)
    return refuse(field, "text-longest", text, { longest: LENGTHS.longest, length });
  return null;
}

/** Why a member may not do something at all, when they may not. */
export function notAllowed(member: ActingMember, action: Action): Result<never, FieldError> | null {
  if (may(member, action)) return null;
  return member.suspended
    ? refuse("member", "member-suspended", member.name)
    : refuse("member", "role-needed", member.roles.join(", ") || "none");
}

/** Why nothing new can come to an entry: it is locked, or another stands instead. */
export function notTaking(history: EntryHistory): Result<never, FieldError> | null {
  const locked = whileLocked(history);
  if (locked) return locked;
  return history.replacedBy === null ? null : refuse("entry", "entry-replaced", history.replacedBy);
}

export function whileLocked({ locked, acts }: EntryHistory): Result<never, FieldError> | null {
  const lock = locked
    ? acts.findLast(({ did, undone }) => did.kind === "locked" && undone === null)
    : undefined;
  return lock ? refuse("entry", "entry-locked", lock.reason) : null;
}

/** A member, or the operator's import, as the trail keeps them. */
export const signed = (who: ActingMember | { readonly importer: string }): By =>
  "importer" in who ? { id: null, name: who.importer } : { id: who.id, name: who.name };
