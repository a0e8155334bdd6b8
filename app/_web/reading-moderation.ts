import type { Challenge } from "#core/review/entry-history";
import { isOpen } from "#core/review/find-in-history";
import { live } from "./live.ts";

/** Entries with open challenges that are looked at. */
const MOST = 200;

/** A challenge that waits for its decision, or for the votes on its appeal. */
export type WaitingChallenge = {
  readonly slug: string;
  readonly title: string;
  readonly challenge: Challenge;
};

/** Challenges and appeals that wait, the longest waiting first. */
export async function openChallenges(): Promise<readonly WaitingChallenge[]> {
  const { reviewLists, trails, entries } = await live();
  const slugs = await reviewLists.challenged(MOST);
  const found = await Promise.all(
    slugs.map(async (slug) => {
      const [traced, entry] = [await trails.history(slug), await entries.bySlug(slug)];
      const open = traced?.history.challenges.filter(isOpen) ?? [];
      return open.map((challenge) => ({ slug, title: entry?.content.title ?? slug, challenge }));
    }),
  );
  return found.flat().toSorted((a, b) => a.challenge.at.localeCompare(b.challenge.at));
}
