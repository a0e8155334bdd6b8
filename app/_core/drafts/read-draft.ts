import { parsePeriod } from "../dates/parse.ts";
import { suggestPeriod } from "../dates/suggest.ts";
import type { EntryContent } from "../entries/entry.ts";
import { makeSlug } from "../entries/make-slug.ts";
import { FIELDS, KINDS, MAKER_KINDS, MAKER_PARTS, TECHNIQUES } from "../entries/vocabulary.ts";
import type { FieldError } from "../field-error.ts";
import type { Columns } from "../import/columns.ts";
import { slugInAddress } from "../questions/parse-proposal.ts";
import { plainSize, type Typed, TypedReader } from "../questions/typed-text.ts";
import type { DraftPhotograph } from "./draft.ts";
import { DRAFT_LENGTHS, type DraftField, RELATION_FIELDS, type RelationField } from "./draft-fields.ts";
import { readCitations } from "./read-citations.ts";
import { type PhotographToSubmit, readPhotographs } from "./read-photographs.ts";

/** What a draft says, as far as it can be read, with everything that keeps it from being submitted. */
export type ReadDraft = {
  /** What cannot be read is left empty in it. */
  readonly content: EntryContent;
  readonly photographs: readonly PhotographToSubmit[];
  /** Columns of a maker who is new; null when the maker is known, or none is named. */
  readonly newMaker: (Columns & { readonly key: string; readonly name: string }) | null;
  readonly summary: string;
  /** Members who wrote it too, as they were named. */
  readonly coAuthors: readonly string[];
  /** In the order of the form. */
  readonly errors: readonly FieldError[];
};

const SEVERAL_LINES: readonly DraftField[] = [
  "description",
  "words",
  "distinguish",
  "reproductions",
  "period_from_reason",
  "period_to_reason",
  "sources",
  "summary",
];

/** Reads a draft. A new entry needs a title, a kind, a field, a description and a photograph; a change needs its why. */
export function readDraft(
  typed: Typed,
  photographs: readonly DraftPhotograph[],
  isChange: boolean,
): ReadDraft {
  const read = new TypedReader(typed);
  const needed = new Set<DraftField>(["title", "description", ...(isChange ? (["summary"] as const) : [])]);
  const text = (field: DraftField): string => {
    const lengths = { shortest: needed.has(field) ? 1 : 0, longest: DRAFT_LENGTHS[field] };
    return SEVERAL_LINES.includes(field) ? read.text(field, lengths) : read.line(field, lengths);
  };
  const oneOf = <T extends string>(field: DraftField, allowed: readonly T[]): T | null =>
    (typed[field] ?? "").trim() === "" ? null : read.oneOf(field, allowed);
  const chosen = <T extends string>(field: DraftField, allowed: readonly T[]): T | null => {
    if ((typed[field] ?? "").trim() === "") read.refuse(field, "required", "");
    return oneOf(field, allowed);
  };
  const shown = readPhotographs(read, typed, photographs);
  const title = text("title");
  const kind = chosen("kind", KINDS);
  const field = chosen("field", FIELDS);
  // A new line on the mark is a new line in the field, or a stroke.
  const words = text("words").replace(/\s*\n\s*/g, " / ");
  const known = text("maker");
  const part = oneOf("maker_part", MAKER_PARTS);
  const newMaker = readNewMaker(read, known);
  const maker = known || newMaker?.key || null;
  const content: EntryContent = {
    title,
    kind: kind ?? "mark",
    field,
    maker,
    makerPart: maker === null ? null : (part ?? "made"),
    description: text("description"),
    words,
    emblem: text("emblem"),
    frame: text("frame"),
    technique: oneOf("technique", TECHNIQUES),
    material: text("material"),
    placeOnObject: text("place_on_object"),
    colours: listOf(text("colours"), /[;,]/),
    sizeMm: readSize(read, text("size_mm")),
    period: readPeriod(read, text("period")),
    periodFromReason: text("period_from_reason"),
    periodToReason: text("period_to_reason"),
    distinguish: text("distinguish"),
    reproductions: text("reproductions"),
    relations: (Object.keys(RELATION_FIELDS) as RelationField[]).flatMap((each) =>
      readRelations(read, each, text(each)),
    ),
    citations: readCitations(read, typed),
    sources: listOf(text("sources"), /\n/),
  };
  const coAuthors = listOf(text("co_authors"), /[;\n]/);
  const summary = text("summary");
  return { content, photographs: shown, newMaker, coAuthors, summary, errors: read.errors };
}

const listOf = (text: string, mark: RegExp): readonly string[] =>
  text
    .split(mark)
    .map((part) => part.trim())
    .filter((part) => part !== "");

function readNewMaker(read: TypedReader, known: string): ReadDraft["newMaker"] {
  const name = read.line("new_maker", { longest: DRAFT_LENGTHS.new_maker });
  const place = read.line("new_maker_place", { longest: DRAFT_LENGTHS.new_maker_place });
  if (name === "") return null;
  if (known !== "") read.refuse("new_maker", "one-maker", name);
  const kind = read.oneOf("new_maker_kind", MAKER_KINDS);
  const key = makeSlug(name);
  if (key === "") read.refuse("new_maker", "name-letters", name);
  return { key, name, kind: kind ?? "", place };
}

function readSize(read: TypedReader, typed: string): EntryContent["sizeMm"] {
  if (typed === "") return null;
  const [, width, height] = /^(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)$/.exec(plainSize(typed).trim()) ?? [];
  const size = { width: Number(width ?? 0), height: Number(height ?? 0) };
  if (size.width > 0 && size.height > 0) return size;
  read.refuse("size_mm", "size", typed);
  return null;
}

/** EDTF as it stands, or what people write instead of it: both are shown as they are understood. */
function readPeriod(read: TypedReader, typed: string): string | null {
  if (typed === "") return null;
  const parsed = parsePeriod(typed);
  if (parsed.ok) return parsed.value.edtf;
  const meant = suggestPeriod(typed);
  const understood = meant === null ? null : parsePeriod(meant);
  if (understood?.ok) return understood.value.edtf;
  read.errors.push(parsed.error);
  return null;
}

function readRelations(read: TypedReader, field: RelationField, typed: string): EntryContent["relations"] {
  const slugs = listOf(typed, /[;,\s]/).flatMap((each) => {
    const slug = slugInAddress(each);
    if (slug === null) read.refuse(field, "entry-address", each);
    return slug ?? [];
  });
  return [...new Set(slugs)].map((entry) => ({ kind: RELATION_FIELDS[field], entry }));
}
