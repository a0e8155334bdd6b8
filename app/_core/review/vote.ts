import type { Field } from "../entries/vocabulary.ts";
import type { Interest } from "../members/member.ts";

export const CHOICES = ["support", "oppose", "abstain"] as const;
export type Choice = (typeof CHOICES)[number];

/** What a vote rests on. */
export const BASES = [
  "handled the object",
  "compared photographs",
  "published source",
  "maker's records",
  "other",
] as const;
export type Basis = (typeof BASES)[number];

/** Who voted, as they stood when they did: later appointments or declarations change no vote. */
export type Voter = {
  readonly id: string;
  readonly name: string;
  /** Fields in which they were reviewers. */
  readonly fields: readonly Field[];
  readonly interests: readonly Interest[];
};

export type Vote = {
  readonly voter: Voter;
  readonly choice: Choice;
  readonly reason: string;
  readonly basis: Basis;
  readonly at: string;
};

/** The rules by which a vote does not count. */
const NOT_COUNTED = [
  "not a reviewer in the field",
  "author",
  "interest in the maker",
  "interest in the entry",
  "decides it",
] as const;
export type NotCounted = (typeof NOT_COUNTED)[number];
