import { cache } from "react";
import type { RevisionView } from "#core/entries/revision";
import type { Actor } from "#core/members/member";
import { may } from "#core/permissions";
import type { By } from "#core/review/entry-event";
import type { EntryHistory, Review } from "#core/review/entry-history";
import { findRevision } from "#core/review/find-in-history";
import type { UnderReview } from "#core/review/review-lists";
import { findNearestEntries } from "#usecases/find-nearest-entries";
import type { NearestEntry } from "#usecases/look-up/show-nearest";
import { chooseModel } from "#usecases/look-up-mark";
import { actor } from "./actor.ts";
import { live } from "./live.ts";
import { showHistory, waitingForVotes } from "./reading-reviews.ts";

export { actor } from "./actor.ts";
export { keptForm } from "./kept-forms.ts";

/** Revisions under review that are looked through for those that wait for one member. */
const MOST = 500;

/** The review of an entry's latest submitted revision, for whoever looks. */
export type ReviewShown = {
  readonly slug: string;
  readonly history: EntryHistory;
  readonly review: Review;
  readonly revision: RevisionView;
  /** Authors besides the one who put it forward. */
  readonly coAuthors: readonly By[];
  readonly by: Actor;
  readonly at: string;
};

export const showReview = cache(async (slug: string): Promise<ReviewShown | null> => {
  const found = await showHistory(slug);
  const review = found?.history.reviews.at(-1);
  if (!found || !review) return null;
  const recorded = findRevision(found.history, review.revision);
  const wired = await live();
  const revision = await wired.revisions.shown(slug, recorded?.number ?? 0);
  if (!revision) return null;
  const others = (recorded?.authors ?? []).filter((author) => author !== review.submittedBy.id);
  const coAuthors = (await Promise.all(others.map(wired.members.find))).flatMap((each) => each ?? []);
  const at = wired.clock.now().toISOString();
  return { slug, history: found.history, review, revision, coAuthors, by: await actor(), at };
});

/** Entries that come nearest to a revision's photographs by image; none while no model answers. */
export async function nearestTo({
  slug,
  revision,
}: Pick<ReviewShown, "slug" | "revision">): Promise<readonly NearestEntry[]> {
  const wired = await live();
  const chosen = await chooseModel(wired);
  if (!chosen.ok) return [];
  const photographs = revision.view.photographs.map(({ id }) => id);
  return findNearestEntries(wired, chosen.value, photographs, slug);
}

/** What waits for the vote of whoever looks, the longest waiting first: in their fields, not theirs, not voted on. */
export const waitingForMe = cache(async (): Promise<readonly UnderReview[]> => {
  const by = await actor();
  if (by.kind !== "member" || !may(by, "vote")) return [];
  const all = await waitingForVotes({ fields: by.fields, after: 0, limit: MOST });
  return all.filter(({ voted, authorId }) => !voted && authorId !== by.id);
});

/** The neighbours of an entry among what waits for one's vote; of one that waits no more, those around its age. */
export async function besides({ slug, review }: ReviewShown): Promise<{
  readonly previous: string | null;
  readonly next: string | null;
  readonly count: number;
}> {
  const waiting = await waitingForMe();
  const others = waiting.filter((each) => each.slug !== slug);
  const isBefore = (each: UnderReview) =>
    each.submittedAt < review.submittedAt || (each.submittedAt === review.submittedAt && each.slug < slug);
  return {
    previous: others.findLast(isBefore)?.slug ?? null,
    next: others.find((each) => !isBefore(each))?.slug ?? null,
    count: waiting.length,
  };
}

/** Everything under review, the longest waiting first. */
export async function underReview(): Promise<readonly UnderReview[]> {
  return waitingForVotes({ fields: null, after: 0, limit: MOST });
}

/** An unguessable name for what a form makes, so that sending it twice makes it once. */
export async function makeToken(): Promise<string> {
  return (await live()).randomness.token();
}

export async function now(): Promise<string> {
  return (await live()).clock.now().toISOString();
}

/** Any revision of an entry by its number. */
export async function showNumbered(slug: string, number: number): Promise<RevisionView | null> {
  return (await live()).revisions.shown(slug, number);
}
