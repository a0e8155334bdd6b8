import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";

type Given = Omit<Extract<EntryCommand, { type: "withdraw a submission" }>, "type" | "by" | "at">;

/** An author takes a revision back from review. */
export function withdrawSubmission(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  return actOnEntry(needs, actor, "withdraw a submission", entry, (by, at) => ({
    type: "withdraw a submission",
    by,
    at,
    ...given,
  }));
}
