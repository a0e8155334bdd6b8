import type { EntryState, Kind, MakerPart } from "../entries/vocabulary.ts";
import type { PinnedRevision } from "./object-file.ts";

/** What the reference says today of an entry that a file matches, or that a look-up found near. */
export type MatchedEntry = {
  readonly slug: string;
  readonly title: string;
  readonly kind: Kind;
  readonly state: EntryState;
  readonly maker: { readonly slug: string; readonly name: string } | null;
  readonly makerPart: MakerPart | null;
  /** The revision shown today. */
  readonly revision: PinnedRevision;
  /** EDTF. */
  readonly period: string | null;
  readonly placeOnObject: string;
  /** What the entry says of reproductions and forgeries; empty when nothing. */
  readonly reproductions: string;
  /** Slugs of entries that it names as imitations of it. */
  readonly imitatedBy: readonly string[];
  /** How many such marks an object bears, where that is said: `marksSaid` reads it out of an entry's texts. */
  readonly marksPerObject: number | null;
};
