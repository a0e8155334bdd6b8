import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";

type Given = Omit<Extract<EntryCommand, { type: "answer a vote" }>, "type" | "by" | "at">;

/** An author or another reviewer answers a vote that opposes. */
export function answerVote(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  return actOnEntry(needs, actor, "answer a vote", entry, (by, at) => ({
    type: "answer a vote",
    by,
    at,
    ...given,
  }));
}
