import { cache } from "react";
import { isSlug } from "#core/entries/slug";
import type { Field } from "#core/entries/vocabulary";
import type { EntryLink, UnderReview } from "#core/review/review-lists";
import type { Link } from "#core/trail/link";
import { closeReview } from "#usecases/close-reviews";
import type { TracedEntry } from "#usecases/ports/review";
import { actor } from "./actor.ts";
import { live } from "./live.ts";

/** What happened to an entry, with whatever is over closed; asked twice in one request, it is read once. */
export const showHistory = cache(async (slug: string): Promise<TracedEntry | null> => {
  if (!isSlug(slug)) return null;
  return (await closeReview(await live(), slug)).stands;
});

/** Every link of an entry's trail, oldest first; null when there is no such entry. */
export async function trailOfEntry(slug: string): Promise<readonly Link[] | null> {
  const found = await showHistory(slug);
  return found && (await live()).trails.links(`entry:${found.id}`);
}

/** Slug of the entry that a merged one leads to; null for any other. */
export async function standsInstead(slug: string): Promise<string | null> {
  return isSlug(slug) ? (await live()).contents.standsInstead(slug) : null;
}

/** Revisions under review, the longest waiting first, and whether whoever is signed in has voted. */
export async function waitingForVotes(asked: {
  readonly fields: readonly Field[] | null;
  readonly after: number;
  readonly limit: number;
}): Promise<readonly UnderReview[]> {
  const by = await actor();
  return (await live()).reviewLists.waiting({ ...asked, member: by.kind === "member" ? by.id : null });
}

/** Revisions that a member recorded, the latest first. */
export async function contributionsOf(member: string, after = 0, limit = 50): Promise<readonly EntryLink[]> {
  return (await live()).reviewLists.ofMember(member, ["revision recorded"], after, limit);
}

/** Votes that a member cast, the latest first. */
export async function votesOf(member: string, after = 0, limit = 50): Promise<readonly EntryLink[]> {
  return (await live()).reviewLists.ofMember(member, ["vote cast"], after, limit);
}

/** What moderators did, the latest first. */
export async function moderationLog(after = 0, limit = 50): Promise<readonly EntryLink[]> {
  return (await live()).reviewLists.moderation(after, limit);
}
