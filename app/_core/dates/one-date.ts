import type { Day } from "./day.ts";
import { isDateInEdtf } from "./edtf-syntax.ts";
import { outermostDay } from "./matching-days.ts";

/** How finely a date is given. */
export type Precision =
  | "day"
  | "month"
  | "season"
  | "year"
  | "decade"
  | "century"
  | "millennium"
  | "any year";

/** One date of an EDTF text: a day, a month, a season, a year, or one whose digits are not all known. */
export type OneDate = {
  readonly first: Day;
  readonly last: Day;
  readonly precision: Precision;
  /** As written, `X` for a digit not known, without the sign of the year and without marks. */
  readonly year: string;
  readonly month: string | null;
  readonly day: string | null;
  readonly significantDigits: number | null;
  /** The year stated, where it is one: 1950 of `1950S2`. */
  readonly stated: number | null;
  readonly timeOfDay: string | null;
  readonly approximate: boolean;
  readonly uncertain: boolean;
  /** What "about" speaks of, by the coarsest part that bears it; likewise "perhaps". */
  readonly about: Precision | null;
  readonly perhaps: Precision | null;
  /** Which part alone is about or perhaps; null when it is the whole date. */
  readonly markedPart: "year" | "month" | "day" | null;
};

const FOUR_DIGITS =
  /^([?~%]?)(-?)([\dX]{4})(?:S(\d+))?([?~%]?)(?:-([?~%]?)([\dX]{2})([?~%]?)(?:-([?~%]?)([\dX]{2})([?~%]?))?)?(T.*)?$/;
const MANY_DIGITS = /^Y(-?)(\d+)(?:E(\d+))?(?:S(\d+))?([?~%]?)$/;

/** @returns null when the text is no EDTF date, or names a day that no year has */
export function readOneDate(text: string): OneDate | null {
  if (!isDateInEdtf(text)) return null;
  const long = MANY_DIGITS.exec(text);
  if (long) return readLongYear(long);
  const parts = FOUR_DIGITS.exec(text);
  if (!parts) return null;
  const [
    ,
    before,
    sign,
    year = "",
    digits,
    afterYear,
    beforeMonth,
    month,
    afterMonth,
    beforeDay,
    day,
    afterDay,
  ] = parts;
  const marked: readonly (readonly [string, Precision])[] = [
    [`${before}${afterYear}`, yearPrecision(year)],
    [`${beforeMonth ?? ""}${afterMonth ?? ""}`, partPrecision(month, year)],
    [
      `${beforeDay ?? ""}${afterDay ?? ""}`,
      day === undefined || /X/.test(day) ? partPrecision(month, year) : "day",
    ],
  ];
  const about = marked.find(([marks]) => /[~%]/.test(marks))?.[1] ?? null;
  const perhaps = marked.find(([marks]) => /[?%]/.test(marks))?.[1] ?? null;
  const isWholeMarked = day !== undefined ? Boolean(afterDay) : month === undefined || Boolean(afterMonth);
  const significant = digits === undefined ? null : Number(digits);
  const stated = /X/.test(year) ? null : signed(sign, Number(year));
  const known = { isBefore0: sign === "-", year, month, day };
  const [first, last] =
    significant === null || stated === null
      ? [outermostDay(known, "first"), outermostDay(known, "last")]
      : significantSpan(stated, year.length, significant);
  if (!first || !last) return null;
  return {
    first,
    last,
    precision: precisionOf(year, month, day),
    year,
    month: month ?? null,
    day: day ?? null,
    significantDigits: significant,
    stated,
    timeOfDay: parts[12]?.slice(1) ?? null,
    approximate: about !== null,
    uncertain: perhaps !== null,
    about,
    perhaps,
    markedPart: markedPart(
      marked.map(([marks]) => marks),
      isWholeMarked,
    ),
  };
}

function readLongYear([
  ,
  sign,
  digits = "",
  exponent = "0",
  significant,
  mark = "",
]: RegExpExecArray): OneDate | null {
  const stated = signed(sign, Number(digits) * 10 ** Number(exponent));
  if (!Number.isSafeInteger(stated)) return null;
  const written = String(Math.abs(stated));
  const count = significant === undefined ? written.length : Number(significant);
  const [first, last] = significantSpan(stated, written.length, count);
  const about = /[~%]/.test(mark) ? "year" : null;
  const perhaps = /[?%]/.test(mark) ? "year" : null;
  return {
    first,
    last,
    precision: "year",
    year: written,
    month: null,
    day: null,
    significantDigits: significant === undefined ? null : count,
    stated,
    timeOfDay: null,
    approximate: about !== null,
    uncertain: perhaps !== null,
    about,
    perhaps,
    markedPart: null,
  };
}

/** A mark after the last part is of the whole date; one elsewhere is said of its part. */
function markedPart(marks: readonly string[], ofWhole: boolean): OneDate["markedPart"] {
  if (ofWhole) return null;
  const [year, month, day] = marks;
  return year ? "year" : month ? "month" : day ? "day" : null;
}

const signed = (sign: string | undefined, n: number) => (sign === "-" && n !== 0 ? -n : n);

/** `S` and the number of a year's digits that are significant: the others may be any. */
function significantSpan(stated: number, length: number, significant: number): readonly [Day, Day] {
  const unit = 10 ** Math.max(0, length - significant);
  const size = Math.floor(Math.abs(stated) / unit) * unit;
  const [from, to] = stated < 0 ? [-(size + unit - 1), -size] : [size, size + unit - 1];
  return [
    { year: from, month: 1, day: 1 },
    { year: to, month: 12, day: 31 },
  ];
}

function yearPrecision(year: string): Precision {
  const known = year.indexOf("X");
  if (known === -1) return "year";
  return known === 3 ? "decade" : known === 2 ? "century" : known === 1 ? "millennium" : "any year";
}

function partPrecision(month: string | undefined, year: string): Precision {
  if (month === undefined || /X/.test(month)) return yearPrecision(year);
  return Number(month) > 12 ? "season" : "month";
}

function precisionOf(year: string, month: string | undefined, day: string | undefined): Precision {
  const ofYear = yearPrecision(year);
  if (ofYear !== "year") return ofYear;
  const ofMonth = partPrecision(month, year);
  return ofMonth === "month" && day !== undefined && !/X/.test(day) ? "day" : ofMonth;
}
