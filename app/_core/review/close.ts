import { madeFrom } from "./authorship.ts";
import type { By, EntryEvent } from "./entry-event.ts";
import type { EntryHistory, Review } from "./entry-history.ts";
import { evolve } from "./evolve.ts";
import { findRevision, isOpen } from "./find-in-history.ts";
import { type Lack, lacksForVerification } from "./minimum.ts";
import type { Tally } from "./tally.ts";
import { tallyReview } from "./weigh-votes.ts";

/** One thing that keeps a review from closing as verified. */
export type Missing =
  | { readonly is: "votes"; readonly counted: number; readonly needed: number }
  /** Fewer support than `of` of every `outOf` of those that do not abstain; or nobody does either. */
  | {
      readonly is: "support";
      readonly support: number;
      readonly oppose: number;
      readonly of: number;
      readonly outOf: number;
    }
  | { readonly is: "time"; readonly hours: number; readonly until: string }
  /** Ids of voters whose opposition nobody has answered. */
  | { readonly is: "answers"; readonly voters: readonly string[] }
  /** Ids of challenges that are undecided or under appeal. */
  | { readonly is: "challenges"; readonly open: readonly string[] }
  | { readonly is: "content"; readonly lacks: readonly Lack[] }
  /** Another revision was verified that this one was not made from: the two have to be brought together in a new one. */
  | { readonly is: "verified meanwhile"; readonly revision: string }
  | { readonly is: "replaced"; readonly by: string }
  | { readonly is: "locked" };

/** How far an open review is, for the screen. */
export type Outlook = {
  readonly tally: Tally;
  /** What is missing now to become verified; empty when it closes as soon as somebody looks. */
  readonly missing: readonly Missing[];
  /** The earliest time at which it can close as verified; null when that would be after its end. */
  readonly earliest: string | null;
  /** When it closes as not accepted if it is not verified by then; null while that waits for a first vote. */
  readonly ends: string | null;
};

const HOUR = 3_600_000;
const later = (at: string, hours: number): string => new Date(Date.parse(at) + hours * HOUR).toISOString();
const isBefore = (a: string, b: string): boolean => Date.parse(a) < Date.parse(b);

/** The program, when time or votes close a review and nobody does. */
export const PROGRAM: By = { id: null, name: "Countermark" };

/** What is still missing for a review to close as verified, and when it can at the earliest. */
export function whatIsMissing(review: Review, history: EntryHistory, now: string): Outlook {
  const { policy, submittedAt } = review;
  const tally = tallyReview(history, review);
  const until = later(submittedAt, policy.hours);
  const ends = endOf(review);
  const waiting: readonly Missing[] = isBefore(now, until)
    ? [{ is: "time", hours: policy.hours, until }]
    : [];
  const earliest = isBefore(now, until) ? until : now;
  return {
    tally,
    missing: [...lackingVotes(review, tally), ...waiting, ...inTheWay(history, review)],
    earliest: ends !== null && isBefore(ends, earliest) ? null : earliest,
    ends,
  };
}

function endOf({ policy, submittedAt, votes }: Review): string | null {
  const from = policy.daysFrom === "first vote" ? votes[0]?.at : submittedAt;
  return from === undefined ? null : later(from, policy.days * 24);
}

function lackingVotes({ policy }: Review, tally: Tally): readonly Missing[] {
  const { support, oppose, counted, unanswered } = tally;
  const { of, outOf } = policy.support;
  const missing: Missing[] = [];
  if (counted < policy.votes) missing.push({ is: "votes", counted, needed: policy.votes });
  if (support + oppose === 0 || support * outOf < of * (support + oppose))
    missing.push({ is: "support", support, oppose, of, outOf });
  if (unanswered.length > 0) missing.push({ is: "answers", voters: unanswered });
  return missing;
}

function inTheWay(history: EntryHistory, { revision }: Review): readonly Missing[] {
  const { verified, replacedBy, locked } = history;
  const missing: Missing[] = [];
  const recorded = findRevision(history, revision);
  const lacks = recorded ? lacksForVerification(recorded) : [];
  if (lacks.length > 0) missing.push({ is: "content", lacks });
  const open = history.challenges.filter(isOpen).map(({ id }) => id);
  if (open.length > 0) missing.push({ is: "challenges", open });
  if (verified !== null && !madeFrom(history, revision, verified))
    missing.push({ is: "verified meanwhile", revision: verified });
  if (replacedBy !== null) missing.push({ is: "replaced", by: replacedBy });
  if (locked) missing.push({ is: "locked" });
  return missing;
}

/**
 * The closings of all reviews that are over, in the order of submission. One that has what it needs is verified, even
 * when it is looked at after its last day: nothing can have changed since. While an entry is locked none closes.
 */
export function closeWhatIsOver(history: EntryHistory, at: string): readonly EntryEvent[] {
  if (history.locked) return [];
  const closings: EntryEvent[] = [];
  let now = history;
  for (const review of history.reviews.filter(({ end }) => end === null)) {
    const { missing, tally, ends } = whatIsMissing(review, now, at);
    if (missing.length > 0 && (ends === null || isBefore(at, ends))) continue;
    const outcome = missing.length === 0 ? "verified" : "not accepted";
    const closed: EntryEvent = {
      type: "review closed",
      at,
      by: PROGRAM,
      revision: review.revision,
      outcome,
      tally,
    };
    closings.push(closed);
    now = evolve(now, closed);
  }
  return closings;
}
