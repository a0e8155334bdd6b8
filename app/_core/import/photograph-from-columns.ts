import type { FieldError } from "../field-error.ts";
import { MOST_IMPRESSIONS } from "../photographs/limits.ts";
import type { Region } from "../photographs/region.ts";
import { fail, ok, type Result } from "../result.ts";
import { ColumnReader, type Columns } from "./columns.ts";

/** The columns of the file `photographs`. */
const PHOTOGRAPH_COLUMNS = [
  "file",
  "entry",
  "shows",
  "region",
  "turn",
  "pixels_per_mm",
  "licence",
  "credit",
  "impression",
] as const;

/** A photograph as a record names it; its region is the whole image when none is given. */
export type PhotographRecord = {
  readonly file: string;
  readonly entry: string;
  readonly shows: string;
  readonly box: Omit<Region, "turn"> | null;
  readonly turn: number;
  readonly pixelsPerMm: number | null;
  readonly licence: string;
  readonly credit: string;
  readonly impression: number | null;
};

/** Reads one record of the file `photographs`; every wrong column is named. */
export function photographFromColumns(columns: Columns): Result<PhotographRecord, readonly FieldError[]> {
  const read = new ColumnReader(columns, PHOTOGRAPH_COLUMNS);
  const file = read.required("file");
  // A record may only name files of its own folder.
  if (/^([/\\]|[a-z]:)|(^|[/\\])\.\.([/\\]|$)/i.test(file)) read.refuse("file", "file-inside", file);
  const box = read.numbers("region", 4, /,/);
  const [x = 0, y = 0, width = 0, height = 0] = box ?? [];
  const turn = read.text("turn") === "" ? 0 : Number(read.text("turn"));
  if (!Number.isFinite(turn)) read.refuse("turn", "number", read.text("turn"));
  const record: PhotographRecord = {
    file,
    entry: read.slug("entry"),
    shows: read.text("shows"),
    box: box === null ? null : { x, y, width, height },
    turn,
    pixelsPerMm: read.number("pixels_per_mm", 0),
    licence: read.required("licence"),
    credit: read.required("credit"),
    impression: read.wholeNumber("impression", 1, MOST_IMPRESSIONS),
  };
  return read.errors.length > 0 ? fail(read.errors) : ok(record);
}
