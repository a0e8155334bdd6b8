import type { Interval } from "../dates/interval.ts";
import type { EntrySummary } from "./entry.ts";
import type { Kind, Technique } from "./vocabulary.ts";

/** What somebody browsing asks for; every part narrows, an absent part does not. */
export type EntryQuery = {
  readonly words: string;
  readonly kind: Kind | null;
  readonly technique: Technique | null;
  readonly material: string | null;
  /** Slug of a maker. */
  readonly maker: string | null;
  /** Entries whose period of use shares a year with this one. */
  readonly period: Interval | null;
  /** From 1. */
  readonly page: number;
};

export const PAGE_SIZE = 24;

/** A page of entries, with what the browsing may be narrowed by and how many entries that would leave. */
export type EntryPage = {
  readonly entries: readonly EntrySummary[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  readonly facets: {
    readonly kinds: readonly Facet[];
    readonly techniques: readonly Facet[];
    readonly materials: readonly Facet[];
    readonly makers: readonly (Facet & { readonly label: string })[];
  };
};

export type Facet = { readonly value: string; readonly count: number };
