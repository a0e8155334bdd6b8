import type { Citation } from "../entries/citation.ts";
import { CITATION_PARTS, type CitationPart, readCitation } from "../entries/read-citation.ts";
import { type Typed, type TypedReader, tidyLine } from "../questions/typed-text.ts";
import { citationField, MOST_CITATIONS } from "./draft-fields.ts";

/** Parts that are chosen, not typed. */
const CHOSEN: ReadonlySet<string> = new Set<CitationPart>(["kind", "says"]);

/** Places of the citations of which anything but the kind is typed, from 1. */
export const citationsTyped = (typed: Typed): readonly number[] =>
  Array.from({ length: MOST_CITATIONS }, (_, i) => i + 1).filter((place) =>
    CITATION_PARTS.some(
      (part) => !CHOSEN.has(part) && (typed[citationField(place, part)] ?? "").trim() !== "",
    ),
  );

/** Reads the citations of a form; one of which nothing was typed is none. */
export function readCitations(read: TypedReader, typed: Typed): readonly Citation[] {
  return citationsTyped(typed).map((place) => {
    const parts = Object.fromEntries(
      CITATION_PARTS.map((part) => [part, tidyLine(typed[citationField(place, part)] ?? "")]),
    );
    return readCitation(parts, (part, rule, value, params) =>
      read.refuse(citationField(place, part), rule, value, params),
    );
  });
}
