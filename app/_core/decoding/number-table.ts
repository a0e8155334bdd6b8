import type { Sourced } from "./sourced.ts";

/** The first number of a year, or, for a milestone, a number known to be of that year. */
export type YearRow = Sourced & {
  readonly year: number;
  readonly first: number;
  /** The day from which numbers of this row can be, where it is not the year's first. */
  readonly from?: string;
  /** What other printed tables give as the first number, where it can't be decided which is right. */
  readonly alsoPrinted?: readonly number[];
  /** What other printed tables give wrongly. */
  readonly misprinted?: readonly number[];
  /** By how much the first number can be off. */
  readonly within?: number;
  readonly milestone?: boolean;
};

/** Where a number stands in a table; `from` and `to` are years, `to` open at the table's end. */
export type Place = {
  readonly is: "year" | "either" | "span" | "last";
  readonly from: number;
  readonly to: number | null;
  /** The row it stands in; of two that are possible, the earlier. */
  readonly row: YearRow;
  readonly next: YearRow | null;
};

/** The numbers from which a row's year is possible, and from which it is certain. */
function edges({ first, alsoPrinted = [], within = 0 }: YearRow) {
  const shift = within === 0 ? [] : [first - within, first + within];
  const all = [first, ...alsoPrinted, ...shift];
  return { possible: Math.min(...all), certain: Math.max(...all) };
}

/** The last number that the table vouches for: its last year is taken to be as long as the one before. */
export function lastNumber(rows: readonly YearRow[]): number {
  const last = rows.at(-1);
  const before = rows.at(-2);
  return last && before ? last.first + (last.first - before.first) - 1 : 0;
}

/** @returns null when the number is not in the table */
export function placeNumber(rows: readonly YearRow[], number: number): Place | null {
  if (number < (rows[0]?.first ?? 1) || number > lastNumber(rows)) return null;
  const at = rows.findLastIndex((row) => edges(row).possible <= number);
  const row = rows[at];
  if (!row) return null;
  const before = rows[at - 1];
  if (before && number < edges(row).certain)
    return { is: "either", from: before.year, to: row.year, row: before, next: row };
  const next = rows[at + 1] ?? null;
  if (next === null) return { is: "last", from: row.year, to: null, row, next };
  const began = Number((row.from ?? String(row.year)).slice(0, 4));
  if (began !== row.year) return { is: "either", from: began, to: row.year, row, next };
  if (row.milestone || next.milestone) return { is: "span", from: row.year, to: next.year, row, next };
  return { is: "year", from: row.year, to: row.year, row, next };
}
