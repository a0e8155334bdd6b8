import type { FieldError } from "#core/field-error";
import type { ActingMember, Actor } from "#core/members/member";
import type { Action } from "#core/permissions";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import { decide } from "#core/review/decide";
import type { EntryHistory } from "#core/review/entry-history";
import type { Trails } from "../ports/review.ts";
import type { Clock } from "../ports.ts";
import { requireMember } from "./require-member.ts";

export type ActNeeds = { readonly trails: Trails; readonly clock: Clock };

/**
 * A member does something to an entry, if the role allows it and the rules do. Whatever was over by then is closed
 * first, also when the act comes too late.
 */
export async function actOnEntry(
  { trails, clock }: ActNeeds,
  actor: Actor,
  action: Action,
  entry: string,
  commandOf: (by: ActingMember, at: string) => EntryCommand,
): Promise<Result<EntryHistory, FieldError>> {
  const member = requireMember(actor, action);
  if (!member.ok) return member;
  const at = clock.now().toISOString();
  const done = await trails.change(entry, (history) => decide(history, commandOf(member.value, at)));
  if (!done.ok) await trails.change(entry, (history) => decide(history, { type: "close what is over", at }));
  return done;
}
