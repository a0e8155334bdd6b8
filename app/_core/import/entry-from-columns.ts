import type { EntryContent } from "../entries/entry.ts";
import { FIELDS, KINDS, MAKER_PARTS, type RelationKind, TECHNIQUES } from "../entries/vocabulary.ts";
import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { citationsFromText } from "./citations-from-text.ts";
import { ColumnReader, type Columns } from "./columns.ts";

const RELATION_COLUMNS: readonly (readonly [string, RelationKind])[] = [
  ["preceded_by", "preceded by"],
  ["followed_by", "followed by"],
  ["variant_of", "variant of"],
  ["imitated_by", "imitated by"],
];

/** The columns of the file `entries`. */
const ENTRY_COLUMNS = [
  "key",
  "title",
  "kind",
  "field",
  "maker",
  "maker_part",
  "words",
  "emblem",
  "frame",
  "technique",
  "material",
  "place_on_object",
  "colours",
  "size_mm",
  "period",
  "period_from_reason",
  "period_to_reason",
  "description",
  "distinguish",
  "reproductions",
  ...RELATION_COLUMNS.map(([column]) => column),
  "citations",
  "sources",
] as const;

/** An entry with the key it is addressed by. */
export type EntryRecord = { readonly slug: string; readonly content: EntryContent };

/** Reads one record of the file `entries`; every wrong column is named. */
export function entryFromColumns(columns: Columns): Result<EntryRecord, readonly FieldError[]> {
  const read = new ColumnReader(columns, ENTRY_COLUMNS);
  const slug = read.slug("key");
  const size = read.numbers("size_mm", 2, /x/);
  for (const side of size ?? [])
    if (side <= 0) read.refuse("size_mm", "number-above", String(side), { above: 0 });
  const kind = read.oneOf("kind", KINDS);
  if (kind === null && read.text("kind") === "") read.required("kind");
  const maker = read.text("maker") === "" ? null : read.slug("maker");
  const content: EntryContent = {
    title: read.required("title"),
    kind: kind ?? "mark",
    field: read.oneOf("field", FIELDS),
    maker,
    makerPart: read.oneOf("maker_part", MAKER_PARTS) ?? (maker === null ? null : "made"),
    words: read.text("words"),
    emblem: read.text("emblem"),
    frame: read.text("frame"),
    technique: read.oneOf("technique", TECHNIQUES),
    material: read.text("material"),
    placeOnObject: read.text("place_on_object"),
    colours: read.list("colours"),
    sizeMm: size?.[0] !== undefined && size[1] !== undefined ? { width: size[0], height: size[1] } : null,
    period: read.edtf("period"),
    periodFromReason: read.text("period_from_reason"),
    periodToReason: read.text("period_to_reason"),
    description: read.text("description"),
    distinguish: read.text("distinguish"),
    reproductions: read.text("reproductions"),
    relations: RELATION_COLUMNS.flatMap(([column, kindOfRelation]) =>
      read.slugs(column).map((entry) => ({ kind: kindOfRelation, entry })),
    ),
    citations: citationsFromText(read),
    sources: read.list("sources"),
  };
  return read.errors.length > 0 ? fail(read.errors) : ok({ slug, content });
}
