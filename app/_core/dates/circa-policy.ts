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

export const CIRCA: CircaPolicy = { about: YEARS, perhaps: YEARS };
