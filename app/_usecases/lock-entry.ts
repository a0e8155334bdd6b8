import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";

type Given = Omit<Extract<EntryCommand, { type: "lock" }>, "type" | "by" | "at">;

/** A moderator locks an entry against changes. */
export function lockEntry(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  return actOnEntry(needs, actor, "lock an entry", entry, (by, at) => ({ type: "lock", by, at, ...given }));
}
