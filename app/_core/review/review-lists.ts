import type { EntryState, Field } from "../entries/vocabulary.ts";
import type { Photograph } from "../photographs/photograph.ts";
import type { Link } from "../trail/link.ts";

/** A revision that waits for votes, as the desk lists it. */
export type UnderReview = {
  readonly slug: string;
  readonly state: EntryState;
  readonly field: Field | null;
  readonly revision: string;
  readonly number: number;
  readonly title: string;
  readonly submittedAt: string;
  readonly createdBy: string;
  /** Members who wrote it. */
  readonly authorId: string | null;
  /** How many have voted, whether it counts or not. */
  readonly voters: number;
  /** Has the member who asks voted? */
  readonly voted: boolean;
  readonly photograph: Photograph | null;
};

/** A link of some entry's trail with the entry it concerns; null for acts that concern none. */
export type EntryLink = {
  readonly link: Link;
  readonly entry: { readonly slug: string; readonly title: string; readonly state: EntryState } | null;
};

/** What moderators did, as the log of moderation shows it. */
export const MODERATION = [
  "challenge decided",
  "appeal vote cast",
  "content hidden",
  "merged",
  "locked",
  "act undone",
  "reviewer appointed",
  "moderator appointed",
  "administrator appointed",
  "appointment ended",
  "member suspended",
  "member restored",
] as const;
