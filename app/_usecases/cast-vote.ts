import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";

type Given = Omit<Extract<EntryCommand, { type: "vote" }>, "type" | "by" | "at">;

/** A reviewer votes on a revision under review, or votes anew; both votes stay on record. */
export function castVote(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  return actOnEntry(needs, actor, "vote", entry, (by, at) => ({ type: "vote", by, at, ...given }));
}
