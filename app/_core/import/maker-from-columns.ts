import { parsePeriod } from "../dates/parse.ts";
import type { MakerContent } from "../entries/maker.ts";
import { MAKER_KINDS, SUCCESSIONS } from "../entries/vocabulary.ts";
import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { ColumnReader, type Columns } from "./columns.ts";

/** The columns of the file `makers`. */
const MAKER_COLUMNS = [
  "key",
  "name",
  "kind",
  "place",
  "trades",
  "active",
  "other_names",
  "note",
  "follows",
  "follows_how",
  "sources",
] as const;

/** Reads one record of the file `makers`; every wrong column is named. */
export function makerFromColumns(columns: Columns): Result<MakerContent, readonly FieldError[]> {
  const read = new ColumnReader(columns, MAKER_COLUMNS);
  const follows = read.slugs("follows");
  const content: MakerContent = {
    slug: read.slug("key"),
    name: read.required("name"),
    kind: read.oneOf("kind", MAKER_KINDS) ?? "firm",
    place: read.text("place"),
    trades: read.list("trades"),
    active: read.edtf("active"),
    otherNames: read.list("other_names").map((part) => otherName(part, read)),
    note: read.text("note"),
    follows,
    followsHow: read.oneOf("follows_how", SUCCESSIONS) ?? (follows.length > 0 ? "succession" : null),
    sources: read.list("sources"),
  };
  return read.errors.length > 0 ? fail(read.errors) : ok(content);
}

/** `1781/1790: Name` or a name alone. */
function otherName(text: string, read: ColumnReader): { period: string; name: string } {
  const colon = text.indexOf(":");
  if (colon < 0) return { period: "", name: text };
  const period = text.slice(0, colon).trim();
  const parsed = parsePeriod(period, "other_names");
  if (!parsed.ok) read.errors.push(parsed.error);
  return { period, name: text.slice(colon + 1).trim() };
}
