import { authorsOfChanges } from "./authorship.ts";
import type { EntryHistory, Review } from "./entry-history.ts";
import { findRevision } from "./find-in-history.ts";
import { type Tally, tallyOf, type WeighedVote } from "./tally.ts";
import type { NotCounted, Vote, Voter } from "./vote.ts";

/**
 * The votes of a review, one a voter, in the order in which they first voted: the latest stands, the earlier stay on
 * record. An answer belongs to the vote that stood when it was given.
 */
export function weighVotes(history: EntryHistory, review: Review): readonly WeighedVote[] {
  const voters = [...new Set(review.votes.map(({ voter }) => voter.id))];
  const rule = whatCountsOut(history, review);
  return voters.flatMap((id) => {
    const earlier = review.votes.filter(({ voter }) => voter.id === id);
    const vote = earlier.pop();
    if (vote === undefined) return [];
    return [{ vote, notCounted: rule(vote.voter), earlier, answers: answersTo(review, vote) }];
  });
}

/** The rule by which somebody's vote would not count, said before it is cast; null when it would. */
export const whyItWouldNotCount = (history: EntryHistory, review: Review, voter: Voter): NotCounted | null =>
  whatCountsOut(history, review)(voter);

/** How a review stands. */
export const tallyReview = (history: EntryHistory, review: Review): Tally =>
  tallyOf(weighVotes(history, review));

function answersTo(review: Review, vote: Vote): WeighedVote["answers"] {
  const given = review.answers.filter(({ voter, at }) => voter === vote.voter.id && at >= vote.at);
  return given.flatMap(({ by, text, at }) =>
    by.id === null || by.id === vote.voter.id ? [] : [{ by: by.id, name: by.name, text, at }],
  );
}

/** The rule that counts a voter out; null when the vote counts. No vote counts on a revision of no field. */
function whatCountsOut(history: EntryHistory, review: Review): (voter: Voter) => NotCounted | null {
  const revision = findRevision(history, review.revision);
  const authors = authorsOfChanges(history, review.revision);
  const deciders = decidersOf(history, review.revision);
  return ({ id, fields, interests }) => {
    if (authors.has(id)) return "author";
    const within = (kind: "maker" | "entry", slug: string | null | undefined) =>
      interests.some((interest) => interest.in.kind === kind && interest.in.slug === slug);
    if (within("maker", revision?.maker)) return "interest in the maker";
    if (within("entry", revision?.entry)) return "interest in the entry";
    if (deciders.has(id)) return "decides it";
    if (!revision?.field || !fields.includes(revision.field)) return "not a reviewer in the field";
    return null;
  };
}

/** Moderators who decided, or voted on the appeal, that this revision be reviewed. */
function decidersOf(history: EntryHistory, revision: string): ReadonlySet<string | null> {
  const sent = history.challenges.filter(({ revision: challenged, decision }) => {
    if (decision?.consequence.kind === "new revision to review")
      return decision.consequence.revision === revision;
    return challenged === revision;
  });
  return new Set(
    sent.flatMap(({ decision, appeal }) => [
      ...(decision ? [decision.by.id] : []),
      ...(appeal?.votes ?? []).map(({ by }) => by.id),
    ]),
  );
}
