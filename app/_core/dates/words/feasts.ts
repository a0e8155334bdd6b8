import { type Day, dayAfter, isoDay } from "../day.ts";
import { easterSunday } from "./easter.ts";

/** Feasts and quarter days that letters and bills are dated by, with their month and day. */
const FIXED: Readonly<Record<string, readonly [month: number, day: number]>> = {
  "new year": [1, 1],
  "new year's day": [1, 1],
  "twelfth night": [1, 5],
  epiphany: [1, 6],
  candlemas: [2, 2],
  "st valentine's day": [2, 14],
  "lady day": [3, 25],
  annunciation: [3, 25],
  "st george's day": [4, 23],
  "may day": [5, 1],
  midsummer: [6, 24],
  "midsummer day": [6, 24],
  lammas: [8, 1],
  michaelmas: [9, 29],
  halloween: [10, 31],
  "all hallows": [11, 1],
  "all saints": [11, 1],
  "all saints' day": [11, 1],
  "all souls": [11, 2],
  martinmas: [11, 11],
  "st andrew's day": [11, 30],
  "christmas eve": [12, 24],
  christmas: [12, 25],
  "christmas day": [12, 25],
  "boxing day": [12, 26],
  "st stephen's day": [12, 26],
  "new year's eve": [12, 31],
};

/** Feasts that move with Easter, by the days after it. */
const MOVABLE: Readonly<Record<string, number>> = {
  "shrove tuesday": -47,
  "ash wednesday": -46,
  "mothering sunday": -21,
  "palm sunday": -7,
  "maundy thursday": -3,
  "good friday": -2,
  "easter eve": -1,
  easter: 0,
  "easter day": 0,
  "easter sunday": 0,
  "easter monday": 1,
  ascension: 39,
  "ascension day": 39,
  whitsun: 49,
  "whit sunday": 49,
  pentecost: 49,
  "whit monday": 50,
  "trinity sunday": 56,
  "corpus christi": 60,
};

/**
 * Before it, one land kept Easter by the old calendar and the next by the new: Britain and its colonies changed in
 * September 1752. No day is computed for what may have been either.
 */
const FIRST_YEAR = 1753;

/** The day of a feast in a year, in EDTF; null when the feast isn't known, or its day in that year. */
export function dayOfFeast(name: string, year: number): string | null {
  const fixed = FIXED[name];
  if (fixed) return isoDay({ year, month: fixed[0], day: fixed[1] });
  const after = MOVABLE[name];
  if (after === undefined || year < FIRST_YEAR) return null;
  return isoDay(daysFrom({ year, ...easterSunday(year) }, after));
}

function daysFrom(day: Day, count: number): Day {
  // From the first of January forwards, so that one way of counting is enough.
  let left = dayOfYear(day) + count - 1;
  let found: Day = { year: day.year, month: 1, day: 1 };
  for (; left > 0; left--) found = dayAfter(found);
  return found;
}

function dayOfYear(day: Day): number {
  let count = 1;
  for (
    let each: Day = { year: day.year, month: 1, day: 1 };
    each.month !== day.month || each.day !== day.day;
    count++
  )
    each = dayAfter(each);
  return count;
}
