import type { EntryContent } from "../entries/entry.ts";
import { makeSlug } from "../entries/make-slug.ts";
import { MAKER_KINDS } from "../entries/vocabulary.ts";
import type { FieldError } from "../field-error.ts";
import type { Columns } from "../import/columns.ts";
import { entryFromColumns } from "../import/entry-from-columns.ts";
import { fail, ok, type Result } from "../result.ts";
import { plainSize, type Typed, TypedReader } from "./typed-text.ts";

/** Fields that are columns of the import too, with the signs each may have. */
const COLUMNS = {
  title: 200,
  description: 4000,
  kind: 40,
  technique: 40,
  material: 100,
  place_on_object: 200,
  words: 500,
  emblem: 300,
  size_mm: 40,
  maker: 100,
  maker_part: 40,
  period: 60,
  period_from_reason: 1000,
  period_to_reason: 1000,
  distinguish: 2000,
  sources: 2000,
} as const;
type Column = keyof typeof COLUMNS;

/** All fields, in the order in which the form asks for them. */
export const ENTRY_FIELDS = [
  "title",
  "description",
  "kind",
  "technique",
  "material",
  "place_on_object",
  "words",
  "emblem",
  "size_mm",
  "maker",
  "maker_part",
  "new_maker",
  "new_maker_kind",
  "new_maker_place",
  "period",
  "period_from_reason",
  "period_to_reason",
  "distinguish",
  "sources",
  "shows",
  "licence",
  "credit",
] as const;
export type EntryTyped = Readonly<Record<(typeof ENTRY_FIELDS)[number], string>>;

/** What is to be recorded: columns as the import reads them, and what they were understood as. */
export type EntryToMake = {
  readonly columns: Columns;
  /** Columns of a maker who is new; null when the maker is known, or none is named. */
  readonly newMaker: (Columns & { readonly key: string; readonly name: string }) | null;
  readonly content: EntryContent;
  readonly photographs: { readonly shows: string; readonly licence: string; readonly credit: string };
};

/**
 * Reads the form in which a question becomes an entry, by the rules of the import. Besides a title and a kind it
 * needs a description, and a licence and credit for its photographs, which a review asks for.
 */
export function parseEntry(typed: Typed): Result<EntryToMake, readonly FieldError[]> {
  const read = new TypedReader({ ...typed, size_mm: plainSize(typed.size_mm ?? "") });
  const columns = readColumns(read);
  const newMaker = readNewMaker(read, columns.maker);
  const photographs = {
    shows: read.line("shows", { longest: 200 }),
    licence: read.line("licence", { shortest: 1, longest: 100 }),
    credit: read.line("credit", { shortest: 1, longest: 120 }),
  };
  const all = { ...columns, ...(newMaker ? { maker: newMaker.key } : {}) };
  const entry = entryFromColumns({ ...all, key: "key" });
  const errors = [...read.errors, ...(entry.ok ? [] : entry.error.filter((error) => !names(read, error)))];
  if (errors.length > 0 || !entry.ok) return fail(errors.toSorted((a, b) => placeOf(a) - placeOf(b)));
  return ok({ columns: all, newMaker, content: entry.value.content, photographs });
}

function readColumns(read: TypedReader): Record<Column, string> {
  const many: readonly Column[] = ["description", "distinguish", "sources"];
  const needed: readonly Column[] = ["title", "description"];
  const entries = (Object.entries(COLUMNS) as [Column, number][]).map(([name, longest]) => {
    const lengths = { shortest: needed.includes(name) ? 1 : 0, longest };
    return [name, many.includes(name) ? read.text(name, lengths) : read.line(name, lengths)] as const;
  });
  const columns = Object.fromEntries(entries) as Record<Column, string>;
  // The import parts sources by semicolons; in a form each stands on a line of its own.
  return { ...columns, sources: columns.sources.replace(/\s*\n\s*/g, "; ") };
}

function readNewMaker(read: TypedReader, known: string | undefined): EntryToMake["newMaker"] {
  const name = read.line("new_maker", { longest: 120 });
  const place = read.line("new_maker_place", { longest: 120 });
  if (name === "") return null;
  if (known) read.refuse("new_maker", "one-maker", name);
  const kind = read.oneOf("new_maker_kind", MAKER_KINDS);
  const key = makeSlug(name);
  if (key === "") read.refuse("new_maker", "name-letters", name);
  return { key, name, kind: kind ?? "", place };
}

const ORDER: readonly string[] = ENTRY_FIELDS;
const placeOf = ({ field }: FieldError): number => ORDER.indexOf(field);

const names = (read: TypedReader, { field }: FieldError): boolean =>
  read.errors.some((error) => error.field === field);
