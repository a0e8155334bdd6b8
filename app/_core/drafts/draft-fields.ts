import { CITATION_PARTS, type CitationPart } from "../entries/read-citation.ts";
import type { RelationKind } from "../entries/vocabulary.ts";

/** Fields of one value, in the order of the form, with the signs each may have. */
export const DRAFT_LENGTHS = {
  title: 200,
  kind: 40,
  field: 40,
  maker: 100,
  maker_part: 40,
  new_maker: 120,
  new_maker_kind: 40,
  new_maker_place: 120,
  description: 4000,
  words: 500,
  emblem: 300,
  frame: 300,
  technique: 40,
  material: 100,
  place_on_object: 200,
  colours: 300,
  size_mm: 40,
  period: 60,
  period_from_reason: 1000,
  period_to_reason: 1000,
  distinguish: 2000,
  reproductions: 2000,
  preceded_by: 1000,
  followed_by: 1000,
  variant_of: 1000,
  imitated_by: 1000,
  sources: 2000,
  co_authors: 500,
  summary: 1000,
} as const;
export type DraftField = keyof typeof DRAFT_LENGTHS;
export const DRAFT_FIELDS = Object.keys(DRAFT_LENGTHS) as readonly DraftField[];

/** Which field of the form holds entries of which relation. */
export const RELATION_FIELDS = {
  preceded_by: "preceded by",
  followed_by: "followed by",
  variant_of: "variant of",
  imitated_by: "imitated by",
} as const satisfies Readonly<Partial<Record<DraftField, RelationKind>>>;
export type RelationField = keyof typeof RELATION_FIELDS;

export const MOST_CITATIONS = 20;
/** `citation-2-title`: a part of the citation at a place, from 1. */
export const citationField = (place: number, part: CitationPart): string => `citation-${place}-${part}`;

/** What is typed of each photograph. */
const PHOTOGRAPH_PARTS = [
  "shows",
  "credit",
  "licence",
  "impression",
  "pixels_per_mm",
  "x",
  "y",
  "width",
  "height",
  "turn",
] as const;
export type PhotographPart = (typeof PHOTOGRAPH_PARTS)[number];
/** `photograph-0a1b...-shows`: a part of what is typed of the photograph of that image. */
export const photographField = (sha256: string, part: PhotographPart): string =>
  `photograph-${sha256.slice(0, 16)}-${part}`;

const NAMES = new Set<string>(DRAFT_FIELDS);
const NUMBERED = new RegExp(`^citation-([1-9]|1\\d|20)-(${CITATION_PARTS.join("|")})$`);
const OF_PHOTOGRAPH = new RegExp(`^photograph-[0-9a-f]{16}-(${PHOTOGRAPH_PARTS.join("|")})$`);

/** Is it a field of the form of a draft? Whatever else is sent is not kept. */
export const isDraftField = (name: string): boolean =>
  NAMES.has(name) || NUMBERED.test(name) || OF_PHOTOGRAPH.test(name);

/**
 * What a field belongs to: a citation is compared and chosen with all its parts, and a photograph with all that is
 * said of it; so are the place and size of its frame. Any other field stands for itself.
 */
export function groupOf(name: string): string {
  return /^(citation-\d+|photograph-[0-9a-f]{16})-/.exec(name)?.[1] ?? name;
}

/** The place of the citation that a group stands for, from 1; null for any other group. */
export function citationOf(group: string): number | null {
  const place = /^citation-(\d+)$/.exec(group)?.[1];
  return place === undefined ? null : Number(place);
}
