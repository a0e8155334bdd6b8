import { isoDay } from "../day.ts";
import { dayOfFeast } from "./feasts.ts";
import { monthNumber, ordinal, two } from "./numbers.ts";

type Groups = readonly string[];
/** What a form says in EDTF, one date or two with `/` between; null when it isn't one after all. */
type Form = readonly [RegExp, (...groups: Groups) => string | null];

const SEASON_CODES: Readonly<Record<string, number>> = {
  spring: 21,
  summer: 22,
  autumn: 23,
  fall: 23,
  winter: 24,
};

/** A third of a month, by its days. */
const PARTS_OF_MONTH: Readonly<Record<string, readonly [string, string]>> = {
  early: ["01", "10"],
  mid: ["11", "20"],
};

/**
 * Early, mid and late of ten years and of a hundred: thirds, of a hundred years in whole decades. Declared here; each
 * is said as "about", so that its edges are soft.
 */
const THIRDS_OF_DECADE: Readonly<Record<string, readonly [number, number]>> = {
  early: [0, 3],
  mid: [3, 6],
  late: [6, 9],
};
const THIRDS_OF_CENTURY: Readonly<Record<string, readonly [number, number]>> = {
  early: [0, 2],
  mid: [3, 6],
  late: [7, 9],
  beginning: [0, 0],
  end: [9, 9],
};

const PART = "(early|mid|middle|late|beginning|start|end)(?:\\s+of|\\s+in|-)?\\s*";
const CENTURY = "([\\w-]+?)(?:[\\s-]+(?:century|centuries|cent\\.?|c\\.?))(?:\\s+(bce))?";
const FRACTION = "(\\w+)[\\s-]+(half|third|quarter|decade)(?:\\s+of)?\\s+";

const pad = (year: number) => `${year < 0 ? "-" : ""}${String(Math.abs(year)).padStart(4, "0")}`;
const yearOf = (digits: string, bce: string | undefined) => pad(bce ? 1 - Number(digits) : Number(digits));

const FORMS: readonly Form[] = [
  [/^(\d{3,4})$/, (year = "") => yearOf(year, undefined)],
  [/^(\d{1,4}) ?(bce)$/, (year = "", bce) => yearOf(year, bce)],
  [/^(\d{3})0'?s$/, (decade) => `${decade}X`],
  [new RegExp(`^${PART}(\\d{3})0'?s$`), (part = "", decade) => thirdOfDecade(part, `${decade}`)],
  [new RegExp(`^${CENTURY}$`), (which = "", bce) => century(which, bce)],
  [/^c(?=\d\d$)(\d\d)$/, (which = "") => century(which, undefined)],
  [new RegExp(`^${PART}${CENTURY}$`), (part = "", which = "", bce) => thirdOfCentury(part, which, bce)],
  [new RegExp(`^turn(?:\\s+of)?\\s+${CENTURY}$`), (which = "", bce) => turnOfCentury(which, bce)],
  [
    new RegExp(`^${FRACTION}${CENTURY}$`),
    (nth = "", of = "", which = "", bce) => fractionOfCentury(nth, of, which, bce),
  ],
  [/^(\d{4}),? ([a-z]+)\.?$/, (year = "", name = "") => monthOfYear(name, year)],
  [/^([a-z]+)\.?,?(?: of)? (\d{3,4})$/, (name = "", year = "") => monthOfYear(name, year)],
  [
    /^(early|mid|late)[\s-]([a-z]+)\.?,? (\d{3,4})$/,
    (part = "", name = "", year = "") => partOfMonth(part, name, year),
  ],
  [
    /^(\d{1,2})(?:st|nd|rd|th)?(?: of)? ([a-z]+)\.?,? (\d{3,4})$/,
    (day = "", name = "", year = "") => dayOfMonth(day, name, year),
  ],
  [
    /^([a-z]+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{3,4})$/,
    (name = "", day = "", year = "") => dayOfMonth(day, name, year),
  ],
  [
    /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/,
    (year = "", month = "", day = "") => `${year}-${two(Number(month))}-${two(Number(day))}`,
  ],
  [
    /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/,
    (day = "", month = "", year = "") => `${year}-${two(Number(month))}-${two(Number(day))}`,
  ],
  [
    /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/,
    (one = "", other = "", year = "") => dayOrMonthFirst(one, other, year),
  ],
  [
    /^(\d{4})[./](\d{1,2})$/,
    (year = "", month = "") => (Number(month) > 12 ? null : `${year}-${two(Number(month))}`),
  ],
  [
    /^(spring|summer|autumn|fall|winter)(?: of)? (\d{4})(?:[-/]\d{1,2})?$/,
    (season = "", year = "") => `${year}-${SEASON_CODES[season]}`,
  ],
  [/^(\w+) quarter(?: of)? (\d{4})$/, (nth = "", year = "") => divisionOfYear(nth, 4, 32, year)],
  [/^q(\d) (\d{4})$/, (nth = "", year = "") => divisionOfYear(nth, 4, 32, year)],
  [/^(\w+) half(?: of)? (\d{4})$/, (nth = "", year = "") => divisionOfYear(nth, 2, 39, year)],
  [new RegExp(`^${PART}(\\d{4})$`), (part = "", year = "") => thirdOfYear(part, year)],
  [
    /^([a-z' .-]+?),?(?: of)? (\d{4})$/,
    (feast = "", year = "") =>
      dayOfFeast(feast.replace("saint ", "st ").replace("st. ", "st "), Number(year)),
  ],
];

/** One date or period without "about" and without "from ... to", in EDTF; null when it isn't understood. */
export function readSingle(text: string): string | null {
  for (const [form, write] of FORMS) {
    const groups = form.exec(text);
    const written = groups && write(...groups.slice(1));
    if (written) return written;
  }
  return null;
}

/** EDTF counts a century as its hundred years: the 19th is 18XX, 1800 to 1899. */
function centuryDigits(which: string, bce: string | undefined): number | null {
  const nth = ordinal(which.replace(/^c/, ""));
  return nth === null || nth < 1 || nth > 21 || bce ? null : nth - 1;
}

function century(which: string, bce: string | undefined): string | null {
  const nth = ordinal(which);
  if (bce && nth) return `${pad(1 - nth * 100)}/${pad(-(nth - 1) * 100)}`;
  const digits = centuryDigits(which, bce);
  return digits === null ? null : `${two(digits)}XX`;
}

function third(part: string): string {
  if (part === "middle") return "mid";
  return part === "start" ? "beginning" : part;
}

function thirdOfCentury(part: string, which: string, bce: string | undefined): string | null {
  const digits = centuryDigits(which, bce);
  const [from, to] = THIRDS_OF_CENTURY[third(part)] ?? [];
  if (digits === null || from === undefined) return null;
  return from === to ? `${two(digits)}${from}X~` : `${two(digits)}${from}X~/${two(digits)}${to}X~`;
}

function turnOfCentury(which: string, bce: string | undefined): string | null {
  const digits = centuryDigits(which, bce);
  return digits ? `${digits * 100 - 5}~/${digits * 100 + 4}~` : null;
}

function thirdOfDecade(part: string, decade: string): string | null {
  const named = third(part);
  const [from, to] =
    THIRDS_OF_DECADE[named === "beginning" ? "early" : named === "end" ? "late" : named] ?? [];
  return from === undefined ? null : `${decade}${from}~/${decade}${to}~`;
}

const LENGTHS: Readonly<Record<string, number>> = { half: 50, quarter: 25, decade: 10 };

function fractionOfCentury(nth: string, of: string, which: string, bce: string | undefined): string | null {
  const digits = centuryDigits(which, bce);
  const length = LENGTHS[of] ?? 100 / 3;
  const count = Math.round(100 / length);
  const place = nth === "last" ? count : ordinal(nth);
  if (digits === null || place === null || place < 1 || place > count) return null;
  const start = digits * 100;
  return `${pad(start + Math.round((place - 1) * length))}/${pad(start + Math.round(place * length) - 1)}`;
}

function divisionOfYear(nth: string, count: number, before: number, year: string): string | null {
  const place = nth === "last" ? count : ordinal(nth);
  return place === null || place < 1 || place > count ? null : `${year}-${before + place}`;
}

function thirdOfYear(part: string, year: string): string | null {
  const named = third(part);
  if (named === "beginning" || named === "early") return `${year}-37`;
  return named === "mid" ? `${year}-38` : `${year}-39`;
}

function monthOfYear(name: string, year: string): string | null {
  const month = monthNumber(name);
  return month === null ? null : `${year.padStart(4, "0")}-${two(month)}`;
}

function dayOfMonth(day: string, name: string, year: string): string | null {
  const month = monthNumber(name);
  return month === null ? null : isoDay({ year: Number(year), month, day: Number(day) });
}

function partOfMonth(part: string, name: string, year: string): string | null {
  const month = monthOfYear(name, year);
  if (month === null) return null;
  const days = PARTS_OF_MONTH[part];
  return days ? `${month}-${days[0]}/${month}-${days[1]}` : `${month}-21/${month}`;
}

/** 3/12/1911 is the 12th of March in one land and the 3rd of December in another: both, as one of a set. */
function dayOrMonthFirst(one: string, other: string, year: string): string {
  const date = (month: string, day: string) => `${year}-${two(Number(month))}-${two(Number(day))}`;
  if (Number(one) > 12) return date(other, one);
  if (Number(other) > 12) return date(one, other);
  return one === other ? date(one, one) : `[${[date(one, other), date(other, one)].sort().join(",")}]`;
}
