import type { EntryView } from "./entry.ts";

/** A revision as a list of them shows it. */
export type RevisionLine = {
  readonly id: string;
  /** From 1. */
  readonly number: number;
  /** SHA-256 over the canonical JSON of the content, hexadecimal. */
  readonly contentHash: string;
  readonly createdAt: string;
  readonly createdBy: string;
  /** What its author changed, and why; empty for an import. */
  readonly summary: string;
  /** Numbers of the revisions it was made from. */
  readonly parents: readonly number[];
};

/** Any revision of an entry as its page shows it. */
export type RevisionView = {
  readonly view: EntryView;
  readonly line: RevisionLine;
  /** Number of the revision that the entry's page shows. */
  readonly shown: number;
  /** Number of the newest revision. */
  readonly newest: number;
};
