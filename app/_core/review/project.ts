import type { EntryState, Field } from "../entries/vocabulary.ts";
import { whatIsMissing } from "./close.ts";
import type { EntryHistory, Review } from "./entry-history.ts";
import { isOpen } from "./find-in-history.ts";
import { hiddenContent } from "./standing.ts";

/** What lists and look-ups need of an entry's history, kept beside its trail. */
export type EntryProjection = {
  readonly state: EntryState;
  readonly shown: string | null;
  readonly verified: string | null;
  readonly field: Field | null;
  /** The latest review that is open; `closesAt` is when it is time to look whether it is over, if ever. */
  readonly review: null | {
    readonly revision: string;
    readonly submittedAt: string;
    readonly closesAt: string | null;
    readonly voters: readonly string[];
  };
  readonly challenged: boolean;
  readonly replacedBy: string | null;
  /** Its address leads to the entry that stands instead. */
  readonly merged: boolean;
  readonly locked: boolean;
  /** Found by look-ups and lists. */
  readonly listed: boolean;
  /** Texts that are not served: a revision's id, a slash, the field. */
  readonly hiddenTexts: readonly string[];
  /** Ids of photographs that are not served. */
  readonly hiddenPhotographs: readonly string[];
};

export function projectionOf(history: EntryHistory): EntryProjection {
  const { state, shown, verified, replacedBy, locked } = history;
  const waiting = history.reviews.filter(({ end }) => end === null);
  const open = waiting.at(-1);
  const subject = history.revisions.find(({ id }) => id === shown) ?? history.revisions.at(-1);
  const hidden = hiddenContent(history);
  const merged = history.acts.some(({ did, undone }) => did.kind === "merged" && undone === null);
  return {
    state,
    shown,
    verified,
    field: subject?.field ?? null,
    review: open
      ? {
          revision: open.revision,
          submittedAt: open.submittedAt,
          closesAt: waiting.flatMap((review) => timeToLook(history, review) ?? []).sort()[0] ?? null,
          voters: [...new Set(open.votes.map(({ voter }) => voter.id))],
        }
      : null,
    challenged: history.challenges.some(isOpen),
    replacedBy,
    merged,
    locked,
    listed: state !== "withdrawn" && state !== "superseded" && !merged,
    hiddenTexts: hidden.flatMap((what) => (what.kind === "text" ? [`${what.revision}/${what.field}`] : [])),
    hiddenPhotographs: hidden.flatMap((what) => (what.kind === "photograph" ? [what.photograph] : [])),
  };
}

/** When a review would close if nothing more were said: as soon as it has been open long enough, or at the very end. */
function timeToLook(history: EntryHistory, review: Review): string | null {
  const { missing, ends } = whatIsMissing(review, history, review.submittedAt);
  const [first, ...others] = missing;
  return first?.is === "time" && others.length === 0
    ? first.until
    : missing.length === 0
      ? review.submittedAt
      : ends;
}
