import { dayOf, daysInMonth } from "../dates/day.ts";

/**
 * A hard bound as one says it, in EDTF: the first of January is the beginning of a year and the last of August the
 * end of a month, so `not after 1922-08-31` is not after `1922-08`.
 */
export function boundDate(day: string, end: "first" | "last"): string {
  const { year, month, day: inMonth } = dayOf(day);
  const closes = end === "first" ? inMonth === 1 : inMonth === daysInMonth(year, month);
  if (!closes) return day;
  const toMonth = day.slice(0, -3);
  return month === (end === "first" ? 1 : 12) ? toMonth.slice(0, -3) : toMonth;
}
