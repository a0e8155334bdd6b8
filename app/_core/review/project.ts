import type { EntryState, Field } from "../entries/vocabulary.ts";
import { decide } from "./decide.ts";
import type { EntryHistory, Review } from "./entry-history.ts";

/** What lists and look-ups need of an entry's history, kept beside its trail. */
export type EntryProjection = {
  readonly state: EntryState;
  readonly shown: string | null;
  readonly verified: string | null;
  readonly field: Field | null;
  /** The review that is open; `closesAt` is when it is time to look whether it is over. */
  readonly review: null | {
    readonly revision: string;
    readonly submittedAt: string;
    readonly closesAt: string;
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
  const open = history.reviews.findLast(({ end }) => end === null) ?? null;
  const subject = history.revisions.find(({ id }) => id === shown) ?? history.revisions.at(-1);
  const acts = history.acts.filter(({ undone }) => undone === null);
  const hidden = acts.flatMap(({ did }) => (did.kind === "hidden" ? [did.what] : []));
  const merged = acts.some(({ did }) => did.kind === "merged");
  return {
    state,
    shown,
    verified,
    field: subject?.field ?? null,
    review: open && {
      revision: open.revision,
      submittedAt: open.submittedAt,
      closesAt: timeToLook(history, open),
      voters: [...new Set(open.votes.map(({ voter }) => voter.id))],
    },
    challenged: history.challenges.some(
      ({ decision, appeal }) => decision === null || appeal?.outcome === null,
    ),
    replacedBy,
    merged,
    locked,
    listed: state !== "withdrawn" && state !== "superseded" && !merged,
    hiddenTexts: hidden.flatMap((what) => (what.kind === "text" ? [`${what.revision}/${what.field}`] : [])),
    hiddenPhotographs: hidden.flatMap((what) => (what.kind === "photograph" ? [what.photograph] : [])),
  };
}

const HOUR = 60 * 60 * 1000;

/** When a review would close if nothing more were said: as soon as it has been open long enough, or at the very end. */
function timeToLook(history: EntryHistory, { submittedAt, policy }: Review): string {
  const after = (hours: number) => new Date(Date.parse(submittedAt) + hours * HOUR).toISOString();
  const soonest = after(policy.hours);
  const closes = decide(history, { type: "close what is over", at: soonest });
  return closes.ok && closes.value.length > 0 ? soonest : after(policy.days * 24);
}
