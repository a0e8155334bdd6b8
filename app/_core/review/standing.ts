import type { EntryState } from "../entries/vocabulary.ts";
import type { Consequence, Hidden } from "./entry-event.ts";
import type { Act, Challenge, EntryHistory } from "./entry-history.ts";
import { findReview, tookAway, underAppeal, wasVerified } from "./find-in-history.ts";

type Facts = Omit<EntryHistory, "shown" | "state" | "replacedBy" | "locked">;

/** A history with what follows from its facts: what the page shows, and where the entry stands. */
export function withStanding(facts: Facts): EntryHistory {
  const history = { ...facts, shown: null, state: "draft", replacedBy: null, locked: false } as const;
  const state = stateOf(history);
  return {
    ...facts,
    state,
    shown: facts.verified ?? contested(facts)?.revision ?? facts.reviews.at(-1)?.revision ?? null,
    replacedBy: mergedInto(facts) ?? (state === "superseded" ? supersededBy(facts) : null),
    locked: standingActs(facts).some(({ did }) => did.kind === "locked"),
  };
}

/** Where one revision stands, among the others of its entry. */
export function revisionState(history: EntryHistory, revision: string): EntryState {
  if (history.verified === revision) return isDisputed(history) ? "disputed" : "verified";
  const review = findReview(history, revision);
  if (review === undefined) return "draft";
  if (review.end === null) return "under review";
  if (review.end.is === "withdrawn" || review.end.is === "not accepted") return "not accepted";
  if (!wasVerified(history, revision)) return "draft";
  const decided = history.challenges.findLast((each) => each.revision === revision && tookAway(each));
  return consequenceOf(decided)?.kind === "withdrawn" ? "withdrawn" : "superseded";
}

/** Photographs and texts that moderators have hidden and nobody has shown again. */
export const hiddenContent = (history: EntryHistory): readonly Hidden[] =>
  standingActs(history).flatMap(({ did }) => (did.kind === "hidden" ? [did.what] : []));

function stateOf(facts: Facts): EntryState {
  if (mergedInto(facts) !== null) return "superseded";
  if (isDisputed(facts)) return "disputed";
  if (facts.verified !== null) return "verified";
  if (supersededBy(facts) !== null) return "superseded";
  if (facts.reviews.some(({ end }) => end === null)) return "under review";
  const ended = facts.reviews.flatMap(({ end }) => (end === null ? [] : [end.place]));
  if (ended.length === 0) return "draft";
  const lastEnd = Math.max(...ended);
  const withdrawn = facts.challenges.some(
    (each) => consequenceOf(each)?.kind === "withdrawn" && (each.decision?.place ?? 0) > lastEnd,
  );
  return withdrawn ? "withdrawn" : "not accepted";
}

/** A challenge of the verified revision waits for its decision, or an upheld one for its appeal. */
const isDisputed = (facts: Facts): boolean =>
  contested(facts) !== undefined ||
  facts.challenges.some(({ decision, revision }) => decision === null && revision === facts.verified);

const contested = (facts: Facts): Challenge | undefined =>
  facts.challenges.findLast((each) => underAppeal(each) && each.decision?.ruling !== "dismissed");

const consequenceOf = (challenge: Challenge | undefined): Consequence | null =>
  challenge !== undefined && tookAway(challenge) ? (challenge.decision?.consequence ?? null) : null;

function supersededBy(facts: Facts): string | null {
  const found = facts.challenges.map(consequenceOf).findLast((each) => each?.kind === "superseded");
  return found?.kind === "superseded" ? found.entry : null;
}

function mergedInto(facts: Facts): string | null {
  const found = standingActs(facts).find(({ did }) => did.kind === "merged")?.did;
  return found?.kind === "merged" ? found.into : null;
}

const standingActs = ({ acts }: Facts): readonly Act[] => acts.filter(({ undone }) => undone === null);
