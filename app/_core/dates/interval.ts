import { compareDays, dayOf } from "./day.ts";
import type { Precision } from "./one-date.ts";

/**
 * When something was: an EDTF date, interval or set (ISO 8601-2; Library of Congress specification of
 * 4 February 2019) reduced to what the reference computes with. Years are astronomical (0 is 1 BCE).
 * Made by `parseInterval` only.
 */
export type Interval = {
  readonly edtf: string;
  /** First year the period can have begun in; null when open or unknown. */
  readonly earliest: number | null;
  /** Last year the period can have ended in; null when open or unknown. */
  readonly latest: number | null;
  /** The same to the day, `1911-03-12`. */
  readonly firstDay: string | null;
  readonly lastDay: string | null;
  readonly start: Bound;
  readonly end: Bound;
};

/** One end of a period, as somebody stated it. */
export type Bound = {
  readonly year: number | null;
  readonly open: boolean;
  readonly approximate: boolean;
  readonly uncertain: boolean;
  /** What "about" speaks of, by the coarsest part that bears it; likewise "perhaps". */
  readonly about: Precision | null;
  readonly perhaps: Precision | null;
  /** The first and the last day this end itself may be; null when it is open or unknown. */
  readonly days: { readonly first: string; readonly last: string } | null;
};

/** Do two periods share a year? An open end reaches as far as it likes. */
export function overlaps(a: Interval, b: Interval): boolean {
  const startsBeforeEnd = (x: Interval, y: Interval) =>
    x.earliest === null || y.latest === null || x.earliest <= y.latest;
  return startsBeforeEnd(a, b) && startsBeforeEnd(b, a);
}

/** Does one period hold the whole of another? What is open or unknown on the inside is held by the same alone. */
export function covers(outer: Interval, inner: Interval): boolean {
  const begins =
    outer.firstDay === null || (inner.firstDay !== null && !isLater(outer.firstDay, inner.firstDay));
  const ends = outer.lastDay === null || (inner.lastDay !== null && !isLater(inner.lastDay, outer.lastDay));
  return begins && ends;
}

const isLater = (a: string, b: string) => compareDays(dayOf(a), dayOf(b)) > 0;
