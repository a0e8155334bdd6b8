import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Interval } from "./interval.ts";
import { parseInterval } from "./parse.ts";
import { suggestPeriod } from "./suggest.ts";

/** A date as it was read, and how: as EDTF, or as what people write. */
export type ReadDate = {
  readonly interval: Interval;
  readonly understood: "edtf" | "words";
  /** What else the text may mean, in EDTF: `1905-10` is October 1905, and to many 1905 to 1910. */
  readonly orElse: string | null;
};

/** Reads a date or period in EDTF, or as people write it ("c. 1905-10", "Easter 1921"). */
export function readDate(text: string, field = "date"): Result<ReadDate, FieldError> {
  const meant = suggestPeriod(text);
  const direct = parseInterval(text, field);
  if (direct.ok)
    return ok({ interval: direct.value, understood: "edtf", orElse: otherThan(direct.value, meant) });
  const read = meant === null ? null : parseInterval(meant, field);
  if (read?.ok) return ok({ interval: read.value, understood: "words", orElse: otherReading(text) });
  return fail({ field, rule: "date", received: received(text) });
}

function otherThan({ edtf, firstDay, lastDay }: Interval, meant: string | null): string | null {
  if (meant === null || meant === edtf) return null;
  const other = parseInterval(meant);
  if (!other.ok) return null;
  return other.value.firstDay === firstDay && other.value.lastDay === lastDay ? null : meant;
}

/** "1900s" is ten years to one and a hundred to another. */
function otherReading(text: string): string | null {
  const hundred = /^\D*(\d\d)00'?s$/.exec(text.trim());
  return hundred ? `${hundred[1]}XX` : null;
}
