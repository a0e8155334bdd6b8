/** On what somebody's opinion of a mark rests. */
export const BASES = [
  "handled the object",
  "compared photographs",
  "published source",
  "maker's records",
  "other",
] as const;
type Basis = (typeof BASES)[number];

/** What somebody takes the mark for: an entry of the reference by its slug, or words for what is in none. */
export type Answer =
  | { readonly kind: "entry"; readonly entry: string }
  | { readonly kind: "words"; readonly maker: string; readonly mark: string; readonly period: string };

export type Proposed = {
  readonly answer: Answer;
  readonly reasons: string;
  readonly basis: Basis;
  /** How the proposer wants to be called; nobody has checked it. */
  readonly name: string;
};

/** How the asker has taken a proposal so far. */
export type Standing =
  | { readonly is: "waiting" }
  | { readonly is: "accepted" }
  | { readonly is: "declined"; readonly reason: string };

/** A proposal; its number counts from 1 within the question. */
export type Proposal = Proposed & {
  readonly number: number;
  readonly at: string;
  readonly standing: Standing;
};

export type Published = {
  readonly title: string;
  /** What the asker knows of the object. */
  readonly text: string;
  readonly name: string;
};

type Asked = Published & {
  readonly at: string;
  readonly proposals: readonly Proposal[];
  /** Slug of the entry that was made from it. */
  readonly entry: string | null;
};

/** Everything an open question can be. */
export type Question =
  | { readonly state: "unasked" }
  | ({ readonly state: "open" } & Asked)
  | ({ readonly state: "answered"; readonly accepted: number } & Asked)
  | ({ readonly state: "withdrawn" } & Asked);

export type QuestionState = Question["state"];

/** Something that happened to a question; `at` is the moment in ISO 8601. */
export type QuestionEvent = { readonly at: string } & (
  | ({ readonly type: "published" } & Published)
  | ({ readonly type: "proposed"; readonly proposal: number } & Proposed)
  | { readonly type: "accepted"; readonly proposal: number }
  | { readonly type: "acceptance taken back"; readonly proposal: number }
  | { readonly type: "declined"; readonly proposal: number; readonly reason: string }
  | { readonly type: "made an entry"; readonly entry: string }
  | { readonly type: "withdrawn" }
);

/** What somebody wants to happen to a question. */
export type QuestionCommand = { readonly at: string } & (
  | ({ readonly type: "publish" } & Published)
  | ({ readonly type: "propose" } & Proposed)
  | { readonly type: "accept"; readonly proposal: number }
  | { readonly type: "take acceptance back"; readonly proposal: number }
  | { readonly type: "decline"; readonly proposal: number; readonly reason: string }
  | { readonly type: "make an entry"; readonly entry: string }
  | { readonly type: "withdraw" }
);

/** Proposals that one question takes. */
export const MOST_PROPOSALS = 100;
