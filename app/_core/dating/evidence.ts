import type { Interval } from "../dates/interval.ts";

/** What a dated statement is about: something that happened to the object or to what is on it. */
export const DATED_EVENTS = [
  "made",
  "marked",
  "labelled",
  "sold",
  "given",
  "owned",
  "photographed",
  "repaired",
] as const;
export type DatedEvent = (typeof DATED_EVENTS)[number];

export const EVIDENCE_KINDS = [
  "mark",
  "wording",
  "number",
  "hallmark",
  "catalogue-line",
  "material",
  "construction",
  "maker",
  "story",
  "photograph",
  "repair",
  "address",
  "other",
] as const;
export type EvidenceKind = (typeof EVIDENCE_KINDS)[number];

/** Where a statement stands: in print or in a register, in somebody's memory, or in what the trade takes for granted. */
export type Basis = "published" | "from-memory" | "common-practice";

/** One dated statement, before it stands on a worksheet: what a decoder gives. */
export type DatedStatement = {
  readonly kind: EvidenceKind;
  readonly event: DatedEvent;
  /** EDTF; parsed by parseInterval. */
  readonly edtf: string;
  /** How often such a statement is true of the object it stands on, 0.5 to 0.999. */
  readonly reliability: number;
  /** A sentence from the table row, or plain words with the number in it. */
  readonly reason: string;
  /** Where that stands. */
  readonly source: string;
  readonly basis: Basis;
  /** Empty when there are none. */
  readonly exceptions: string;
};

/** A dated statement on a worksheet. */
export type Evidence = Omit<DatedStatement, "edtf" | "basis"> & {
  readonly id: string;
  readonly interval: Interval;
  /** Further periods, any one of which may be meant instead: a date letter read without its shield. */
  readonly alternatives?: readonly Interval[];
  readonly basis: Basis | null;
  /** Facts read off one label or in one document share a group and count once. */
  readonly group: string | null;
};
