import type { Region } from "../photographs/region.ts";
import type { Typed } from "../questions/typed-text.ts";

/** An uploaded image of a draft. What is said of it is typed, in fields named after it. */
export type DraftPhotograph = {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  /** Where its mark is thought to be, until somebody frames it; null when that is not known. */
  readonly proposed: Region | null;
};

/** What a member is writing: a new entry, or the next revision of one. */
export type Draft = {
  readonly id: string;
  readonly owner: string;
  /** Slug of the entry it revises; null for a new one. */
  readonly entry: string | null;
  /** Ids of the revisions it was made from; none for a new entry. */
  readonly parents: readonly string[];
  /** Id of the revision whose content it began with. */
  readonly basedOn: string | null;
  /** The form as it stands, not yet read. */
  readonly typed: Typed;
  readonly photographs: readonly DraftPhotograph[];
  /** From 1, one more with each time that the form is saved. */
  readonly version: number;
  readonly updatedAt: Date;
  /** What became of it. */
  readonly submitted: { readonly slug: string; readonly number: number } | null;
};

/** Most photographs of one entry. */
export const MOST_DRAFT_PHOTOGRAPHS = 12;
