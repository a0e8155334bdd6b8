import type { DatedStatement } from "../dating/evidence.ts";

/** What is worth knowing besides, made into words by the interface's message files. */
export type Note = {
  readonly is: NoteKind;
  readonly params?: Readonly<Record<string, string | number>>;
};

export type NoteKind =
  | "contradiction"
  | "diamond-class"
  | "diamond-parcel"
  | "diamond-series"
  | "exempt"
  | "fineness"
  | "irregular"
  | "law"
  | "looks-like-year"
  | "narrowed"
  | "no-letters"
  | "no-shields"
  | "not-excluded"
  | "nothing-known"
  | "office"
  | "one-label"
  | "only-one-series"
  | "read-further"
  | "remark"
  | "table-ends"
  | "two-series"
  | "unsafe"
  | "without-style";

/** What somebody read on an object says about its date. */
export type Decoded<S extends DatedStatement = DatedStatement> = {
  readonly statements: readonly S[];
  /** Statements that exclude each other: one of them at most is true of the object. */
  readonly alternatives: readonly S[];
  readonly notes: readonly Note[];
};
