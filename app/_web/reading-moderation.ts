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
  const traced = (await Promise.all(slugs.map(trails.history))).filter((each) => each !== null);
  const summaries = await entries.summaries(traced.map(({ id }) => id));
  const found = traced.flatMap(({ id, slug, history }) =>
    history.challenges
      .filter(isOpen)
      .map((challenge) => ({ slug, title: summaries.get(id)?.title ?? slug, challenge })),
  );
  return found.toSorted((a, b) => a.challenge.at.localeCompare(b.challenge.at));
}
