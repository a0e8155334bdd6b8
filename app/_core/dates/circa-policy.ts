import { dayAfter, dayOf, inYears } from "./day.ts";
import type { Bound, Interval } from "./interval.ts";
import type { Precision } from "./one-date.ts";

/**
 * How many years "about" adds to either side of a date, by what it speaks of, and "perhaps" likewise; both add up.
 * A year and a decade: the rule of library cataloguing for "ca." (plus or minus 5 years; a decade to either side).
 * The others are set in proportion, for want of a rule. That "perhaps" counts as much again follows from the worked
 * example of Cataloging Cultural Objects: probably late 12th century, 1150 to 1220. Shown wherever it is used.
 */
export type CircaPolicy = Readonly<Record<"about" | "perhaps", Readonly<Record<Precision, number>>>>;

const YEARS: Readonly<Record<Precision, number>> = {
  day: 1 / 12,
  month: 1 / 4,
  season: 1 / 2,
  year: 5,
  decade: 10,
  century: 25,
  millennium: 100,
  "any year": 0,
};

export const CIRCA_POLICY: CircaPolicy = { about: YEARS, perhaps: YEARS };

/** A period in years with fractions, year y reaching from y to y + 1; null where an end is open or unknown. */
export type Widened = {
  readonly from: number | null;
  readonly to: number | null;
  /** As far as "about" and "perhaps" reach: the firm edge where a date bears neither. */
  readonly softFrom: number | null;
  readonly softTo: number | null;
};

/** The edges of a period, and the soft ones that "about" and "perhaps" give them. */
export function widened(interval: Interval, policy: CircaPolicy = CIRCA_POLICY): Widened {
  const from = interval.firstDay === null ? null : inYears(dayOf(interval.firstDay));
  const to = interval.lastDay === null ? null : inYears(dayAfter(dayOf(interval.lastDay)));
  return {
    from,
    to,
    softFrom: from === null ? null : from - spread(interval.start, policy),
    softTo: to === null ? null : to + spread(interval.end, policy),
  };
}

function spread({ about, perhaps }: Bound, policy: CircaPolicy): number {
  return (about ? policy.about[about] : 0) + (perhaps ? policy.perhaps[perhaps] : 0);
}
