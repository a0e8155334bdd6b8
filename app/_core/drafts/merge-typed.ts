import { type Merged, mergeContent } from "../entries/merge-content.ts";
import { CITATION_PARTS, type CitationPart } from "../entries/read-citation.ts";
import type { Typed } from "../questions/typed-text.ts";
import { citationField, groupOf } from "./draft-fields.ts";

type TypedCitation = Readonly<Partial<Record<CitationPart, string>>>;

/**
 * Puts two changes of a typed form together. Places of citations mean nothing once two people have added to them, so
 * that each is known by what it says first, and every side is numbered alike before they are compared.
 */
export function mergeTyped(base: Typed, mine: Typed, theirs: Typed): Merged {
  const places: TypedCitation[] = [];
  const from = numberedAlike(base, places, 0);
  const before = places.length;
  const my = numberedAlike(mine, places, before);
  const their = numberedAlike(theirs, places, before);
  return mergeContent(from, my, their, groupOf);
}

/** The citations of a merged form one after another again, from 1. */
export function closeGaps(typed: Typed): Typed {
  const citations = citationsOf(typed);
  return withCitations(
    typed,
    citations.map((citation, i) => [i + 1, citation] as const),
  );
}

/**
 * @param places the citations met so far, in the order of their places; new ones are added
 * @param before how many of them both sides began with
 */
function numberedAlike(side: Typed, places: TypedCitation[], before: number): Typed {
  const citations = citationsOf(side);
  const placed = new Map<TypedCitation, number>();
  const ways = [
    isAlike,
    haveSame("title"),
    haveSame("address"),
    // With another title it may be another work of the author, unless it takes the place of one that was there.
    (each: TypedCitation, other: TypedCitation) =>
      places.indexOf(each) < before && haveSame("author")(each, other),
  ];
  for (const agrees of ways)
    for (const citation of citations.filter((each) => !placed.has(each))) {
      const taken = new Set(placed.values());
      const place = places.findIndex((each, i) => !taken.has(i) && agrees(each, citation));
      if (place >= 0) placed.set(citation, place);
    }
  return withCitations(
    side,
    citations.map((citation) => [(placed.get(citation) ?? places.push(citation) - 1) + 1, citation] as const),
  );
}

const isAlike = (a: TypedCitation, b: TypedCitation): boolean =>
  CITATION_PARTS.every((part) => wordsOf(a, part) === wordsOf(b, part));

const haveSame =
  (part: CitationPart) =>
  (a: TypedCitation, b: TypedCitation): boolean =>
    wordsOf(a, part) !== "" && wordsOf(a, part) === wordsOf(b, part);

const wordsOf = (citation: TypedCitation, part: CitationPart): string =>
  (citation[part] ?? "").replace(/\s+/g, " ").trim().toLowerCase();

function citationsOf(typed: Typed): readonly TypedCitation[] {
  const found = new Map<number, Record<string, string>>();
  for (const [name, text] of Object.entries(typed)) {
    const [, place, part = ""] = /^citation-(\d+)-(.+)$/.exec(name) ?? [];
    if (place === undefined) continue;
    const citation = found.get(Number(place)) ?? {};
    citation[part] = text;
    found.set(Number(place), citation);
  }
  return [...found].sort(([a], [b]) => a - b).map(([, citation]) => citation);
}

function withCitations(typed: Typed, citations: readonly (readonly [number, TypedCitation])[]): Typed {
  const others = Object.entries(typed).filter(([name]) => !/^citation-\d+-/.test(name));
  const numbered = citations.flatMap(([place, citation]) =>
    CITATION_PARTS.flatMap((part) => {
      const text = citation[part];
      return text === undefined ? [] : [[citationField(place, part), text] as const];
    }),
  );
  return Object.fromEntries([...others, ...numbered]);
}
