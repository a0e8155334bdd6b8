import type { DatedStatement } from "../dating/evidence.ts";
import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Decoded, Note } from "./decoded.ts";
import { exceptionsOf, fillReason, groupDigits } from "./fill-reason.ts";
import { lastNumber, type Place, placeNumber, type YearRow } from "./number-table.ts";
import { readNumber } from "./read-number.ts";
import { RELIABILITY } from "./reliability-policy.ts";
import { weakestBasis } from "./sourced.ts";
import designPatents from "./tables/us-design-patents.json" with { type: "json" };
import patents from "./tables/us-patents.json" with { type: "json" };
import tradeMarks from "./tables/us-trade-marks.json" with { type: "json" };

/** A number as it was read on the object. */
export type NumberInput = { readonly number: string };

type Series = {
  readonly table: string;
  readonly rows: readonly YearRow[];
  /** Letters or words before the number that belong to this series. */
  readonly own: readonly string[];
};

export const US_PATENTS: Series = { table: "us-patents", rows: patents as readonly YearRow[], own: [] };
export const US_DESIGN_PATENTS: Series = {
  table: "us-design-patents",
  rows: designPatents as readonly YearRow[],
  own: ["D", "DES", "DESIGN"],
};
export const US_TRADE_MARKS: Series = {
  table: "us-trade-marks",
  rows: tradeMarks as readonly YearRow[],
  own: ["TM", "TRADE", "MARK", "TRADEMARK", "OFF", "OFFICE"],
};

export const decodeUsPatent = (input: NumberInput) => decodeNumber(US_PATENTS, input);
export const decodeUsDesignPatent = (input: NumberInput) => decodeNumber(US_DESIGN_PATENTS, input);
export const decodeUsTradeMark = (input: NumberInput) => decodeNumber(US_TRADE_MARKS, input);

function decodeNumber(series: Series, input: NumberInput): Result<Decoded, FieldError> {
  const number = readNumber(input.number, series.own);
  if (!number.ok) return number;
  const place = placeNumber(series.rows, number.value);
  if (place === null) return fail(notInTable(series.rows, number.value));
  return ok({
    statements: [stateNumber(series.table, number.value, place)],
    alternatives: [],
    notes: noteNumber(number.value, place),
  });
}

/** A number is a not-before and nothing else: the window stays open. */
export function stateNumber(table: string, number: number, place: Place): DatedStatement {
  const { row, next } = place;
  // The year a number stands in follows from where the next one begins, so both rows have to hold.
  const basis = weakestBasis(next === null ? [row] : [row, next]);
  const found = {
    number: groupDigits(number),
    from: String(place.from),
    to: String(place.to ?? ""),
    first: groupDigits(row.first),
    next: groupDigits(next?.first ?? 0),
  };
  return {
    kind: "number",
    event: "marked",
    edtf: `${row.from ?? row.year}/..`,
    reliability: RELIABILITY[basis].hard,
    reason: fillReason(table, place.is === "year" ? "reason" : place.is, found),
    source: next !== null && next.source !== row.source ? `${row.source}; ${next.source}` : row.source,
    basis,
    exceptions: exceptionsOf(table),
  };
}

export function noteNumber(number: number, { is, from, row, next }: Place): readonly Note[] {
  const remarks = [row, ...(is === "either" && next ? [next] : [])].flatMap(({ note }) => note ?? []);
  const ends: readonly Note[] = is === "last" ? [{ is: "table-ends", params: { year: from } }] : [];
  const year: readonly Note[] =
    number >= 1800 && number <= 2030 ? [{ is: "looks-like-year", params: { number } }] : [];
  return [...ends, ...year, ...remarks.map((text): Note => ({ is: "remark", params: { text } }))];
}

export function notInTable(rows: readonly YearRow[], number: number): FieldError {
  const [first, last] = [rows[0], rows.at(-1)];
  const params = {
    from: groupDigits(first?.first ?? 1),
    fromYear: first?.year ?? 0,
    to: groupDigits(lastNumber(rows)),
    toYear: last?.year ?? 0,
  };
  return { field: "number", rule: "not-in-table", received: groupDigits(number), params };
}
