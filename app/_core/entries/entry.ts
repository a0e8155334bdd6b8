import type { Interval } from "../dates/interval.ts";
import type { Photograph } from "../photographs/photograph.ts";
import type { Citation } from "./citation.ts";
import type { Hideable } from "./hideable.ts";
import type { EntryState, Field, Kind, MakerPart, RelationKind, Technique } from "./vocabulary.ts";

/** The content of a revision: everything an entry says, apart from its photographs' pixels. Immutable, hashed. */
export type EntryContent = {
  readonly title: string;
  readonly kind: Kind;
  /** Field of competence that reviews it; null in revisions older than fields. */
  readonly field: Field | null;
  /** Slug of the maker; null for a mark of no known maker yet. */
  readonly maker: string | null;
  readonly makerPart: MakerPart | null;
  /** Transcription as it stands: `/` breaks a line, `[...]` is unreadable. Empty when the mark has no words. */
  readonly words: string;
  readonly emblem: string;
  readonly frame: string;
  readonly technique: Technique | null;
  readonly material: string;
  readonly placeOnObject: string;
  readonly colours: readonly string[];
  readonly sizeMm: { readonly width: number; readonly height: number } | null;
  /** EDTF text of the period of use; null when nothing is known. */
  readonly period: string | null;
  readonly periodFromReason: string;
  readonly periodToReason: string;
  readonly description: string;
  readonly distinguish: string;
  readonly reproductions: string;
  readonly relations: readonly { readonly kind: RelationKind; readonly entry: string }[];
  readonly citations: readonly Citation[];
  /** What is cited in a line of its own words. */
  readonly sources: readonly string[];
};

/** A line of a list of entries. */
export type EntrySummary = {
  readonly slug: string;
  readonly title: string;
  readonly kind: Kind;
  readonly state: EntryState;
  readonly technique: Technique | null;
  readonly material: string;
  readonly period: Interval | null;
  readonly maker: { readonly slug: string; readonly name: string; readonly place: string } | null;
  /** The photograph that stands for the entry; null for an entry without one. */
  readonly photograph: Photograph | null;
  readonly photographCount: number;
};

/** An entry as its page shows it: its current revision, with everything it refers to resolved. */
export type EntryView = {
  readonly summary: EntrySummary;
  readonly content: EntryContent;
  readonly photographs: readonly Photograph[];
  /** What moderators have hidden of this revision: how many photographs, and which texts. */
  readonly hidden: { readonly photographs: number; readonly texts: readonly Hideable[] };
  readonly relations: readonly { readonly kind: RelationKind; readonly entry: EntrySummary }[];
  readonly revision: {
    readonly id: string;
    readonly number: number;
    /** SHA-256 over the canonical JSON of the content, hexadecimal. */
    readonly contentHash: string;
    readonly createdAt: string;
    readonly createdBy: string;
  };
};
