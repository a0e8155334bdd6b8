import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { fail, type Result } from "#core/result";
import type { HidingGround } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import type { Contents } from "./ports/review.ts";
import { type ActNeeds, actOnEntry } from "./review/act-on-entry.ts";
import { requireMember } from "./review/require-member.ts";

type What =
  | { readonly kind: "photograph"; readonly photograph: string }
  | { readonly kind: "text"; readonly revision: string; readonly field: string };

/**
 * A moderator hides a photograph or a text for rights or abuse. The trail keeps who did it, why, and the hash of what
 * was hidden; it is served no more.
 */
export async function hideContent(
  needs: ActNeeds & { readonly contents: Contents },
  actor: Actor,
  entry: string,
  given: {
    readonly act: string;
    readonly what: What;
    readonly ground: HidingGround;
    readonly reason: string;
  },
): Promise<Result<EntryHistory, FieldError>> {
  const member = requireMember(actor, "hide content");
  if (!member.ok) return member;
  const { what, ...rest } = given;
  const sha256 = await needs.contents.hashOf(entry, what);
  if (sha256 === null) {
    const received = what.kind === "photograph" ? what.photograph : what.field;
    return fail({ field: what.kind, rule: "content-not-here", received });
  }
  return actOnEntry(needs, actor, "hide content", entry, (by, at) => ({
    type: "hide content",
    by,
    at,
    what: { ...what, sha256 },
    ...rest,
  }));
}
