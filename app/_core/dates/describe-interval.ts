import { compareDays, type Day } from "./day.ts";
import { type Edtf, type End, isDate, readEdtf, type Span } from "./edtf.ts";
import type { Interval } from "./interval.ts";
import type { OneDate } from "./one-date.ts";

/** A sentence to be: which message, and what goes into it. The words are the interface's. */
export type DateWords = {
  readonly key: DateKey;
  readonly params?: Readonly<Record<string, string | number | DateWords>>;
};
type DateKey =
  | ("unknown" | "fromTo" | "from" | "fromUnknown" | "until" | "unknownUntil" | "open")
  | ("about" | "perhaps" | "perhapsAbout" | "part")
  | ("year" | "bce" | "decade" | "hundred" | "thousand" | "anyYear" | "significant")
  | ("month" | "season" | "monthIn" | "dayIn" | "dayAnyMonth" | "aMonth" | "aDay" | "someTime" | "timed")
  | ("or" | "and" | "comma" | "orBefore" | "orAfter" | "andBefore" | "andAfter");

/** How a period is said: "1871 to about 1890", "from 1902", "summer 1908", "25 December, in the 1560s". */
export function describeInterval(interval: Interval): DateWords {
  const read = readEdtf(interval.edtf);
  return read.ok ? describe(read.value) : { key: "unknown" };
}

function describe(edtf: Edtf): DateWords {
  if (edtf.is === "date") return describeDate(edtf.date);
  if (edtf.is === "interval") return describeEnds(edtf.start, edtf.end);
  const isOne = edtf.is === "one of";
  return listed(
    edtf.members.map((member) => describeMember(member, isOne)),
    isOne ? "or" : "and",
  );
}

function describeEnds(start: End, end: End): DateWords {
  const from = isDate(start) ? describeDate(start) : null;
  const to = isDate(end) ? describeDate(end) : null;
  if (from && to) return { key: "fromTo", params: { from, to } };
  if (from) return { key: end === "open" ? "from" : "fromUnknown", params: { from } };
  if (to) return { key: start === "open" ? "until" : "unknownUntil", params: { to } };
  return { key: start === "open" && end === "open" ? "open" : "unknown" };
}

function describeMember({ from, to }: Span, isOne: boolean): DateWords {
  if (from === to && isDate(from)) return describeDate(from);
  if (isDate(from) && isDate(to))
    return { key: "fromTo", params: { from: describeDate(from), to: describeDate(to) } };
  if (isDate(to)) return { key: isOne ? "orBefore" : "andBefore", params: { year: describeDate(to) } };
  if (isDate(from)) return { key: isOne ? "orAfter" : "andAfter", params: { year: describeDate(from) } };
  return { key: "unknown" };
}

function listed(members: readonly DateWords[], last: "or" | "and"): DateWords {
  return members.reduce((first, second, i) => ({
    key: i === members.length - 1 ? last : "comma",
    params: { first, second },
  }));
}

function describeDate(date: OneDate): DateWords {
  const plain = describePlain(date);
  if (!date.approximate && !date.uncertain) return plain;
  const key = date.approximate ? (date.uncertain ? "perhapsAbout" : "about") : "perhaps";
  if (date.markedPart === null) return { key, params: { year: plain } };
  return { key: "part", params: { date: plain, part: date.markedPart, quality: key } };
}

function describePlain(date: OneDate): DateWords {
  const { year, month, day, timeOfDay } = date;
  const words = month === null ? describeYear(date) : describeWithin(date, year, month, day);
  return timeOfDay === null ? words : { key: "timed", params: { date: words, time: timeOfDay } };
}

function describeYear({ first, last, stated, significantDigits, precision }: OneDate): DateWords {
  if (stated !== null && significantDigits !== null && first.year !== last.year) {
    const params = { year: yearWords(stated), from: yearWords(first.year), to: yearWords(last.year) };
    return { key: "significant", params };
  }
  if (first.year === last.year) return yearWords(first.year);
  if (precision === "any year") return { key: "anyYear" };
  if (first.year < 0)
    return { key: "thousand", params: { from: yearWords(first.year), to: yearWords(last.year) } };
  if (isRun(first.year, last.year, 10)) return { key: "decade", params: { year: String(first.year) } };
  if (isRun(first.year, last.year, 100)) return { key: "hundred", params: { year: String(first.year) } };
  return { key: "thousand", params: { from: yearWords(first.year), to: yearWords(last.year) } };
}

const isRun = (from: number, to: number, length: number) => from % length === 0 && to - from === length - 1;

function yearWords(year: number): DateWords {
  return year > 0
    ? { key: "year", params: { year: String(year) } }
    : { key: "bce", params: { year: String(1 - year) } };
}

function describeWithin(date: OneDate, year: string, month: string, day: string | null): DateWords {
  const inYear = describeYear({
    ...date,
    precision: /^X+$/.test(year) ? "any year" : date.precision,
    ...yearsOf(date),
  });
  const isOneYear = !/X/.test(year);
  if (Number(month) > 12) return { key: "season", params: { season: month, year: inYear } };
  if (/^\d\d$/.test(month)) {
    const named: DateWords = { key: "month", params: { month: String(Number(month)) } };
    const within: DateWords = {
      key: "monthIn",
      params: { month: named, year: inYear, known: String(isOneYear) },
    };
    if (day === null) return within;
    if (day === "XX") return { key: "aDay", params: { when: within } };
    if (/^\d\d$/.test(day)) return { key: "dayIn", params: { day: String(Number(day)), when: within } };
  }
  if (month === "XX" && (day === null || day === "XX"))
    return { key: day === null ? "aMonth" : "aDay", params: { when: inYear } };
  if (month === "XX" && day !== null && /^\d\d$/.test(day))
    return { key: "dayAnyMonth", params: { day: String(Number(day)), year: inYear } };
  return someTime(date);
}

/** A season may end in the year after: its year is the one it is named after. */
function yearsOf({ first, last, month }: OneDate): Pick<OneDate, "first" | "last"> {
  return Number(month) > 12
    ? { first, last: { ...last, year: last.year - (last.month < first.month ? 1 : 0) } }
    : { first, last };
}

function someTime({ first, last, day }: OneDate): DateWords {
  const from = dayWords(first, day !== null);
  if (compareDays(first, last) === 0) return from;
  return { key: "someTime", params: { from, to: dayWords(last, day !== null) } };
}

function dayWords({ year, month, day }: Day, isDay: boolean): DateWords {
  const named: DateWords = { key: "month", params: { month: String(month) } };
  const when: DateWords = { key: "monthIn", params: { month: named, year: yearWords(year), known: "true" } };
  return isDay ? { key: "dayIn", params: { day: String(day), when } } : when;
}
