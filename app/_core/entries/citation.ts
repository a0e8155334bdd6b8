import type { CitationKind, DatedSaying } from "./vocabulary.ts";

/** A published or archived source, so that another person can find it. */
export type Citation = {
  readonly kind: CitationKind;
  /** Author, or the body that issued it. */
  readonly author: string;
  readonly title: string;
  /** Year of publication as it stands; empty when none is given. */
  readonly year: string;
  /** Page, plate, number, shelf mark. */
  readonly place: string;
  /** Of a web page; empty for others. */
  readonly address: string;
  /** Day on which a web page was seen, YYYY-MM-DD; empty for others. */
  readonly seen: string;
  /** When the source shows the mark in use, or what it bounds; not there in one that dates nothing. */
  readonly dated?: { readonly edtf: string; readonly says: DatedSaying };
};
