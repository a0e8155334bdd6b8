import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { fail, type Result } from "#core/result";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";
import { requireMember } from "./review/require-member.ts";
import { whyNotInstead } from "./review/stand-instead.ts";

type Given = Omit<Extract<EntryCommand, { type: "merge" }>, "type" | "by" | "at">;

/** A moderator merges a duplicate into the entry that stands instead: from then on its address leads there. */
export async function mergeEntries(
  needs: ActNeeds,
  actor: Actor,
  entry: string,
  given: Given,
): Promise<Result<EntryHistory, FieldError>> {
  const member = requireMember(actor, "merge entries");
  if (!member.ok) return member;
  const refused = await whyNotInstead(needs.trails, entry, given.into, "into");
  if (refused) return fail(refused);
  return actOnEntry(needs, actor, "merge entries", entry, (by, at) => ({ type: "merge", by, at, ...given }));
}
