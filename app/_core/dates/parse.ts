import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { isoDay } from "./day.ts";
import { type Edtf, type End, endsOf, isDate, readEdtf, spanOf } from "./edtf.ts";
import type { Bound, Interval } from "./interval.ts";
import { suggestPeriod } from "./suggest.ts";

/**
 * Reads an EDTF date, interval or set such as `1871/1890~`, `../1920`, `192X`, `1908-22` or `[1890,1895]`.
 * @param text what somebody typed
 * @param field the name of the field, for the error
 */
export function parseInterval(text: string, field = "period"): Result<Interval, FieldError> {
  const edtf = text.trim();
  const read = readEdtf(edtf);
  if (read.ok) return ok(intervalOf(edtf, read.value));
  const suggestion = suggestPeriod(edtf);
  return fail({
    field,
    rule: read.error,
    received: received(text),
    ...(suggestion ? { params: { suggestion } } : {}),
  });
}

/**
 * Reads a period of use: an EDTF text that names years of four digits and no time of day. Hours and geological ages
 * are left to others.
 */
export function parsePeriod(text: string, field = "period"): Result<Interval, FieldError> {
  const parsed = parseInterval(text, field);
  if (!parsed.ok || !/[TYE]/.test(parsed.value.edtf)) return parsed;
  return fail({ field, rule: "edtf-date-or-interval", received: received(text) });
}

function intervalOf(edtf: string, read: Edtf): Interval {
  const { first, last } = spanOf(read);
  const [start, end] = endsOf(read);
  return {
    edtf,
    earliest: first?.year ?? null,
    latest: last?.year ?? null,
    firstDay: first && isoDay(first),
    lastDay: last && isoDay(last),
    start: bound(start, first?.year ?? null),
    end: bound(end, last?.year ?? null),
  };
}

function bound(end: End, year: number | null): Bound {
  return {
    year,
    open: end === "open",
    approximate: isDate(end) && end.approximate,
    uncertain: isDate(end) && end.uncertain,
    about: isDate(end) ? end.about : null,
    perhaps: isDate(end) ? end.perhaps : null,
    days: isDate(end) ? { first: isoDay(end.first), last: isoDay(end.last) } : null,
  };
}
