import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";

type Given = Omit<Extract<EntryCommand, { type: "vote on an appeal" }>, "type" | "by" | "at">;

/** A moderator who had no part in it yet votes on an appeal. */
export function voteOnAppeal(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  return actOnEntry(needs, actor, "vote on an appeal", entry, (by, at) => ({
    type: "vote on an appeal",
    by,
    at,
    ...given,
  }));
}
