/**
 * A period of use: an EDTF date or interval (ISO 8601-2; Library of Congress specification of 4 February 2019)
 * reduced to what the reference computes with. Years are astronomical (0 is 1 BCE).
 */
export type Interval = {
  readonly edtf: string;
  /** First year the period can have begun in; null when open or unknown. */
  readonly earliest: number | null;
  /** Last year the period can have ended in; null when open or unknown. */
  readonly latest: number | null;
  readonly start: Bound;
  readonly end: Bound;
  /** First day it can have begun on, `YYYY-MM-DD`; null when open or unknown. */
  readonly firstDay: string | null;
  /** Last day it can have ended on, `YYYY-MM-DD`; null when open or unknown. */
  readonly lastDay: string | null;
};

/** One end of a period, as somebody stated it. */
export type Bound = {
  readonly year: number | null;
  readonly open: boolean;
  readonly approximate: boolean;
  readonly uncertain: boolean;
};

/** Do two periods share a year? An open end reaches as far as it likes. */
export function overlaps(a: Interval, b: Interval): boolean {
  const startsBeforeEnd = (x: Interval, y: Interval) =>
    x.earliest === null || y.latest === null || x.earliest <= y.latest;
  return startsBeforeEnd(a, b) && startsBeforeEnd(b, a);
}
