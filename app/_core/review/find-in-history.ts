import type { RecordedRevision } from "./entry-event.ts";
import type { Challenge, EntryHistory, Review } from "./entry-history.ts";

export const findRevision = (history: EntryHistory, id: string): RecordedRevision | undefined =>
  history.revisions.find((revision) => revision.id === id);

/** The latest review of a revision: one that went back to review has had several. */
export const findReview = (history: EntryHistory, revision: string): Review | undefined =>
  history.reviews.findLast((review) => review.revision === revision);

export const findChallenge = (history: EntryHistory, id: string): Challenge | undefined =>
  history.challenges.find((challenge) => challenge.id === id);

/** Is an appeal under way? */
export const underAppeal = ({ appeal }: Challenge): boolean => appeal !== null && appeal.outcome === null;

/** Nothing is verified while a challenge is undecided or its decision under appeal. */
export const isOpen = (challenge: Challenge): boolean =>
  challenge.decision === null || underAppeal(challenge);

/** Has it been decided that the challenged revision is verified no longer, and was that not overturned? */
export const tookAway = ({ decision, appeal }: Challenge): boolean =>
  decision !== null && decision.consequence.kind !== "no change" && appeal?.outcome !== "overturned";

/** Was a revision ever verified? */
export const wasVerified = (history: EntryHistory, revision: string): boolean =>
  history.reviews.some((review) => review.revision === revision && review.end?.is === "verified");
