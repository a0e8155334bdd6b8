import type { EntryEvent } from "./entry-event.ts";
import type { Act, Challenge, EntryHistory, Review } from "./entry-history.ts";
import { findChallenge, findReview, findRevision, tookAway } from "./find-in-history.ts";
import { withStanding } from "./standing.ts";

export const NO_HISTORY: EntryHistory = withStanding({
  length: 0,
  revisions: [],
  reviews: [],
  challenges: [],
  acts: [],
  verified: null,
});

/** The history that a list of events amounts to, oldest first. */
export const historyOf = (events: readonly EntryEvent[]): EntryHistory => events.reduce(evolve, NO_HISTORY);

/** The history after one more event; an event that cannot follow leaves it as it is. */
export function evolve(history: EntryHistory, event: EntryEvent): EntryHistory {
  const after = apply(history, event);
  return after === history ? history : withStanding({ ...after, length: history.length + 1 });
}

function apply(history: EntryHistory, event: EntryEvent): EntryHistory {
  switch (event.type) {
    case "revision recorded":
      if (findRevision(history, event.revision.id)) return history;
      return { ...history, revisions: [...history.revisions, event.revision] };
    case "submitted":
    case "vote cast":
    case "vote answered":
    case "submission withdrawn":
    case "review closed":
      return applyToReview(history, event);
    case "challenged":
    case "challenge decided":
    case "appealed":
    case "appeal vote cast":
    case "appeal decided":
      return applyToChallenge(history, event);
    case "content hidden":
    case "merged":
    case "locked":
    case "act undone":
      return applyAct(history, event);
  }
}

type OfReview = Extract<
  EntryEvent,
  { type: "submitted" | "vote cast" | "vote answered" | "submission withdrawn" | "review closed" }
>;

function applyToReview(history: EntryHistory, event: OfReview): EntryHistory {
  const { at, by, revision } = event;
  const place = history.length + 1;
  const review = findReview(history, revision);
  if (event.type === "submitted") {
    if (findRevision(history, revision) === undefined || review?.end === null) return history;
    const { policy } = event;
    const begun = { revision, begun: place, policy, submittedAt: at, submittedBy: by };
    const open = { ...begun, votes: [], answers: [], end: null };
    return { ...history, reviews: [...history.reviews, open] };
  }
  if (review?.end !== null) return history;
  const changed = (change: Partial<Review>): EntryHistory => ({
    ...history,
    reviews: history.reviews.map((each) => (each === review ? { ...each, ...change } : each)),
  });
  switch (event.type) {
    case "vote cast": {
      const { voter, choice, reason, basis } = event;
      return changed({ votes: [...review.votes, { voter, choice, reason, basis, at }] });
    }
    case "vote answered": {
      const { voter, answer: text } = event;
      return changed({ answers: [...review.answers, { voter, by, text, at }] });
    }
    case "submission withdrawn":
      return changed({ end: { is: "withdrawn", at, place, reason: event.reason } });
    case "review closed": {
      const { outcome, tally } = event;
      const after = changed({ end: { is: outcome, at, place, tally } });
      return outcome === "verified" ? { ...after, verified: revision } : after;
    }
  }
}

type OfChallenge = Extract<
  EntryEvent,
  { type: "challenged" | "challenge decided" | "appealed" | "appeal vote cast" | "appeal decided" }
>;

function applyToChallenge(history: EntryHistory, event: OfChallenge): EntryHistory {
  const { at, by } = event;
  const challenge = findChallenge(history, event.challenge);
  if (event.type === "challenged") {
    if (challenge) return history;
    const { challenge: id, revision, claim, evidence } = event;
    const raised = { id, revision, claim, evidence, at, by, decision: null, appeal: null };
    return { ...history, challenges: [...history.challenges, raised] };
  }
  if (!challenge) return history;
  const changed = (change: Partial<Challenge>): EntryHistory => ({
    ...history,
    challenges: history.challenges.map((each) => (each === challenge ? { ...each, ...change } : each)),
  });
  if (event.type === "challenge decided") {
    if (challenge.decision) return history;
    const { ruling, reason, consequence } = event;
    const after = changed({ decision: { ruling, reason, consequence, at, place: history.length + 1, by } });
    const takes = consequence.kind !== "no change" && history.verified === challenge.revision;
    return takes ? { ...after, verified: null } : after;
  }
  if (event.type === "appealed") {
    if (!challenge.decision || challenge.appeal) return history;
    return changed({ appeal: { reason: event.reason, at, by, votes: [], outcome: null } });
  }
  const { appeal } = challenge;
  if (!appeal || appeal.outcome !== null) return history;
  if (event.type === "appeal vote cast") {
    const { choice, reason } = event;
    return changed({ appeal: { ...appeal, votes: [...appeal.votes, { by, choice, reason, at }] } });
  }
  const after = changed({ appeal: { ...appeal, outcome: event.outcome } });
  return event.outcome === "overturned" ? overturn(after, challenge, at) : after;
}

/** Does the outcome of an appeal send the challenged revision back to review: was a challenge wrongly dismissed? */
export const sendsBack = ({ decision, appeal, by }: Challenge): boolean =>
  decision?.consequence.kind === "no change" &&
  (decision.ruling === "dismissed" || (appeal !== null && appeal.by.id === by.id));

/**
 * What an overturned decision had brought about falls away: the revision that was verified stands verified again,
 * unless another has been verified since or another decision took it away. Where the decision had wrongly left it
 * verified, it is so no longer.
 */
function overturn(history: EntryHistory, challenge: Challenge, at: string): EntryHistory {
  const { revision, decision } = challenge;
  if (!decision) return history;
  if (!tookAway(challenge)) {
    const back = sendsBack(challenge) && history.verified === revision;
    return back ? { ...history, verified: null } : history;
  }
  const begun = (each: Review) =>
    decision.consequence.kind === "new revision to review" &&
    each.revision === decision.consequence.revision &&
    each.begun === decision.place + 1 &&
    each.end === null;
  const reviews = history.reviews.map((each) =>
    begun(each)
      ? { ...each, end: { is: "appeal overturned", at, place: history.length + 1 } as const }
      : each,
  );
  const takenSince = history.challenges.some(
    (each) => tookAway(each) && (each.decision?.place ?? 0) > decision.place,
  );
  return { ...history, reviews, verified: history.verified ?? (takenSince ? null : revision) };
}

type OfAct = Extract<EntryEvent, { type: "content hidden" | "merged" | "locked" | "act undone" }>;

function applyAct(history: EntryHistory, event: OfAct): EntryHistory {
  const { at, by, act: id, reason } = event;
  const known = history.acts.find((act) => act.id === id);
  if (event.type === "act undone") {
    if (!known || known.undone) return history;
    const undone = { ...known, undone: { at, by, reason } };
    return { ...history, acts: history.acts.map((act) => (act === known ? undone : act)) };
  }
  if (known) return history;
  return {
    ...history,
    acts: [...history.acts, { id, at, by, reason, did: whatWasDone(event), undone: null }],
  };
}

function whatWasDone(event: Exclude<OfAct, { type: "act undone" }>): Act["did"] {
  switch (event.type) {
    case "content hidden":
      return { kind: "hidden", what: event.what, ground: event.ground };
    case "merged":
      return { kind: "merged", into: event.into };
    case "locked":
      return { kind: "locked" };
  }
}
