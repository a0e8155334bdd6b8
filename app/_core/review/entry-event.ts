import type { Citation } from "../entries/citation.ts";
import type { Field } from "../entries/vocabulary.ts";
import type { ReviewPolicy } from "./policy.ts";
import type { Tally } from "./tally.ts";
import type { Basis, Choice, Voter } from "./vote.ts";

/** Who did something, as the trail keeps it. `id` is null for the program itself and for the operator's import. */
export type By = { readonly id: string | null; readonly name: string };

/** What the rules need to know of a revision; its words are in the table of revisions, under the same hash. */
export type RecordedRevision = {
  readonly id: string;
  /** Slug of the entry, against which interests are weighed. */
  readonly entry: string;
  /** From 1. */
  readonly number: number;
  readonly contentHash: string;
  /** Ids of the revisions it was made from. */
  readonly parents: readonly string[];
  /** Members who wrote it; none for an import. */
  readonly authors: readonly string[];
  readonly field: Field | null;
  /** Slug. */
  readonly maker: string | null;
  /** What the minimum of a review counts. */
  readonly has: {
    readonly title: boolean;
    readonly description: boolean;
    readonly photographs: number;
    /** Photographs without a licence or a credit. */
    readonly uncredited: number;
    /** Different impressions that the photographs show. */
    readonly impressions: number;
    readonly citations: number;
  };
};

export const CLAIMS = [
  "wrong maker",
  "wrong period",
  "not a genuine mark",
  "photographs of different marks",
  "duplicate",
  "rights",
] as const;
export type Claim = (typeof CLAIMS)[number];

export const RULINGS = ["upheld", "upheld in part", "dismissed"] as const;
export type Ruling = (typeof RULINGS)[number];

/** What a decision brings about, carried out in the same step. */
export type Consequence =
  | { readonly kind: "no change" }
  | { readonly kind: "withdrawn" }
  /** The verified revision goes back to review, as it stands or as a newer revision. */
  | { readonly kind: "new revision to review"; readonly revision: string }
  /** Slug of the entry that stands instead. */
  | { readonly kind: "superseded"; readonly entry: string };

export type Evidence = {
  readonly text: string;
  readonly citations: readonly Citation[];
  /** SHA-256 of images kept with the challenge. */
  readonly photographs: readonly {
    readonly sha256: string;
    readonly credit: string;
    readonly licence: string;
  }[];
};

export const HIDING_GROUNDS = ["rights", "abuse"] as const;
export type HidingGround = (typeof HIDING_GROUNDS)[number];

/** What moderators hide: one photograph by its id, or one text of one revision. */
export type Hidden =
  | { readonly kind: "photograph"; readonly photograph: string; readonly sha256: string }
  | { readonly kind: "text"; readonly revision: string; readonly field: string; readonly sha256: string };

/** What happened to an entry; facts in the past tense, in the order of the trail. Times are ISO 8601, UTC. */
export type EntryEvent = { readonly at: string; readonly by: By } & (
  | { readonly type: "revision recorded"; readonly revision: RecordedRevision }
  | { readonly type: "submitted"; readonly revision: string; readonly policy: ReviewPolicy }
  | {
      readonly type: "vote cast";
      readonly revision: string;
      readonly voter: Voter;
      readonly choice: Choice;
      readonly reason: string;
      readonly basis: Basis;
    }
  | {
      readonly type: "vote answered";
      readonly revision: string;
      readonly voter: string;
      readonly answer: string;
    }
  | { readonly type: "submission withdrawn"; readonly revision: string; readonly reason: string }
  | {
      readonly type: "review closed";
      readonly revision: string;
      readonly outcome: "verified" | "not accepted";
      readonly tally: Tally;
    }
  | {
      readonly type: "challenged";
      readonly challenge: string;
      readonly revision: string;
      readonly claim: Claim;
      readonly evidence: Evidence;
    }
  | {
      readonly type: "challenge decided";
      readonly challenge: string;
      readonly ruling: Ruling;
      readonly reason: string;
      readonly consequence: Consequence;
    }
  | { readonly type: "appealed"; readonly challenge: string; readonly reason: string }
  | {
      readonly type: "appeal vote cast";
      readonly challenge: string;
      readonly choice: "let stand" | "overturn";
      readonly reason: string;
    }
  | { readonly type: "appeal decided"; readonly challenge: string; readonly outcome: "stands" | "overturned" }
  | {
      readonly type: "content hidden";
      readonly act: string;
      readonly what: Hidden;
      readonly ground: HidingGround;
      readonly reason: string;
    }
  /** `into` is the slug of the entry whose page stands instead. */
  | { readonly type: "merged"; readonly act: string; readonly into: string; readonly reason: string }
  | { readonly type: "locked"; readonly act: string; readonly reason: string }
  | { readonly type: "act undone"; readonly act: string; readonly reason: string }
);
