import type { Interval } from "../dates/interval.ts";
import type { EntrySummary } from "./entry.ts";
import type { MakerKind, Succession } from "./vocabulary.ts";

/** A person, workshop or firm as given, with names used over time, places and years of activity. */
export type MakerContent = {
  readonly slug: string;
  readonly name: string;
  readonly kind: MakerKind;
  readonly place: string;
  readonly trades: readonly string[];
  /** EDTF text of the years of activity. */
  readonly active: string | null;
  readonly otherNames: readonly { readonly period: string; readonly name: string }[];
  readonly note: string;
  readonly follows: readonly string[];
  readonly followsHow: Succession | null;
  readonly sources: readonly string[];
};

export type MakerSummary = {
  readonly slug: string;
  readonly name: string;
  readonly kind: MakerKind;
  readonly place: string;
  readonly trades: readonly string[];
  readonly active: Interval | null;
  readonly entryCount: number;
};

/** A maker as its page shows it. */
export type MakerView = {
  readonly summary: MakerSummary;
  readonly note: string;
  readonly otherNames: readonly { readonly period: Interval | null; readonly name: string }[];
  readonly sources: readonly string[];
  readonly predecessors: readonly { readonly how: Succession; readonly maker: MakerSummary }[];
  readonly successors: readonly { readonly how: Succession; readonly maker: MakerSummary }[];
  /** Entries of this maker, by the first year of their period of use. */
  readonly entries: readonly EntrySummary[];
};
