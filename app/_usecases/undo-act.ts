import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";

type Given = Omit<Extract<EntryCommand, { type: "undo an act" }>, "type" | "by" | "at">;

/** A moderator undoes what a moderator did. */
export function undoAct(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  return actOnEntry(needs, actor, "undo an act", entry, (by, at) => ({
    type: "undo an act",
    by,
    at,
    ...given,
  }));
}
