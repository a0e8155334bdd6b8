import type { LetterCycle } from "./hallmark-table.ts";

/** The first and the last day on which a letter was struck. */
export type LetterSpan = { readonly from: string; readonly to: string };

/** Old London letters changed on 19 May, until that day was moved in 1660. */
const changeoverOf = ({ office, changeover }: LetterCycle, year: number): string =>
  office === "London" && year < 1660 ? "05-19" : changeover;

/** From 1975 on letters change with the year at all offices. */
const UNIFORM_FROM = 1975;

/**
 * When a letter of a cycle was struck. A year of letters goes over the turn of the calendar's year.
 * @returns null when the cycle has no such letter
 */
export function spanOfLetter(cycle: LetterCycle, letter: string): LetterSpan | null {
  const at = cycle.letters.indexOf(letter.toUpperCase());
  if (letter.length !== 1 || at < 0) return null;
  const year = cycle.first + at;
  const { short } = cycle;
  if (short?.letter === letter.toUpperCase()) return { from: short.from, to: short.to };
  const next = year + 1 >= UNIFORM_FROM ? "01-01" : changeoverOf(cycle, year + 1);
  const to = dayBefore(year + 1, next);
  return { from: `${year}-${changeoverOf(cycle, year)}`, to };
}

function dayBefore(year: number, changeover: string): string {
  const [month = 1, day = 1] = changeover.split("-").map(Number);
  const before = new Date(0);
  before.setUTCFullYear(year, month - 1, day - 1);
  return before.toISOString().slice(0, 10);
}
