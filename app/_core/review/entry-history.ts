import type { EntryState } from "../entries/vocabulary.ts";
import type { By, Claim, Consequence, Evidence, Hidden, RecordedRevision, Ruling } from "./entry-event.ts";
import type { ReviewPolicy } from "./policy.ts";
import type { Tally } from "./tally.ts";
import type { Vote } from "./vote.ts";

/**
 * Which event of its entry it was, from 1: what came first is told by this, and never by times, which may be alike and
 * which a clock that is set back turns round.
 */
type Place = number;

/** A revision's review, open or over. */
export type Review = {
  readonly revision: string;
  readonly begun: Place;
  readonly policy: ReviewPolicy;
  readonly submittedAt: string;
  readonly submittedBy: By;
  /** In the order in which they were cast; a voter's latest is the one that stands. */
  readonly votes: readonly Vote[];
  readonly answers: readonly {
    readonly voter: string;
    readonly by: By;
    readonly text: string;
    readonly at: string;
  }[];
  readonly end:
    | null
    | { readonly is: "withdrawn"; readonly at: string; readonly place: Place; readonly reason: string }
    /** The decision that began it was overturned. */
    | { readonly is: "appeal overturned"; readonly at: string; readonly place: Place }
    | {
        readonly is: "verified" | "not accepted";
        readonly at: string;
        readonly place: Place;
        readonly tally: Tally;
      };
};

export type Challenge = {
  readonly id: string;
  readonly revision: string;
  readonly claim: Claim;
  readonly evidence: Evidence;
  readonly at: string;
  readonly by: By;
  readonly decision: null | {
    readonly ruling: Ruling;
    readonly reason: string;
    readonly consequence: Consequence;
    readonly at: string;
    readonly place: Place;
    readonly by: By;
  };
  readonly appeal: null | {
    readonly reason: string;
    readonly at: string;
    readonly by: By;
    readonly votes: readonly {
      readonly by: By;
      readonly choice: "let stand" | "overturn";
      readonly reason: string;
      readonly at: string;
    }[];
    readonly outcome: null | "stands" | "overturned";
  };
};

/** An act of moderation on this entry that stands or was undone. */
export type Act = {
  readonly id: string;
  readonly at: string;
  readonly by: By;
  readonly reason: string;
  readonly did:
    | { readonly kind: "hidden"; readonly what: Hidden; readonly ground: "rights" | "abuse" }
    | { readonly kind: "merged"; readonly into: string }
    | { readonly kind: "locked" };
  readonly undone: null | { readonly at: string; readonly by: By; readonly reason: string };
};

/** What the events of one entry amount to. */
export type EntryHistory = {
  /** How many events it is the sum of. */
  readonly length: number;
  readonly revisions: readonly RecordedRevision[];
  /** Of every revision that was ever submitted, by the order of submission. */
  readonly reviews: readonly Review[];
  readonly challenges: readonly Challenge[];
  readonly acts: readonly Act[];
  /** Id of the revision that is verified now; null when none is. */
  readonly verified: string | null;
  /**
   * Id of the revision that the entry's page shows: the verified one, else the one whose decision is under appeal,
   * else the latest submitted one.
   */
  readonly shown: string | null;
  readonly state: EntryState;
  /** Slug of the entry that stands instead, of a superseded or merged one. */
  readonly replacedBy: string | null;
  readonly locked: boolean;
};
