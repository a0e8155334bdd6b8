import { parse as parseEdtf } from "@edtf-ts/core";
import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Bound, Interval } from "./interval.ts";
import { suggestPeriod } from "./suggest.ts";

type Qualification = { approximate?: boolean; uncertain?: boolean; uncertainApproximate?: boolean };
type Part = { type?: string; year?: number | string; qualification?: Qualification; min?: Date; max?: Date };

/**
 * Reads an EDTF date or interval such as `1871/1890~`, `../1920`, `192X` or `1902/..`.
 * Source of the syntax: Library of Congress, Extended Date/Time Format specification, 4 February 2019.
 * @param text what somebody typed
 * @param field the name of the field, for the error
 */
export function parseInterval(text: string, field = "period"): Result<Interval, FieldError> {
  const edtf = text.trim();
  // A period of use is counted in years of four digits; hours and geological ages are left to others.
  if (/[TYE]/.test(edtf) || edtf.includes("-0000"))
    return fail({ field, rule: "edtf-date-or-interval", received: received(text) });
  const parsed = parseEdtf(edtf);
  if (!parsed.success) {
    const rule = parsed.errors.some((e) => e.code === "INVALID_INTERVAL_ORDER") ? "edtf-order" : "edtf";
    const suggestion = suggestPeriod(edtf);
    return fail({ field, rule, received: received(text), ...(suggestion ? { params: { suggestion } } : {}) });
  }
  const value = parsed.value as unknown as Part & {
    start?: Part | null;
    end?: Part | null;
    openStart?: boolean;
    openEnd?: boolean;
  };
  if (value.type === "Date") {
    const start = bound(value, "min", false);
    const end = bound(value, "max", false);
    const days = { firstDay: dayOf(value.min), lastDay: dayOf(value.max) };
    return ok({ edtf, earliest: start.year, latest: end.year, start, end, ...days });
  }
  if (value.type === "Interval") {
    const start = bound(value.start ?? null, "min", value.openStart === true);
    const end = bound(value.end ?? null, "max", value.openEnd === true);
    const days = { firstDay: dayOf(value.start?.min), lastDay: dayOf(value.end?.max) };
    return ok({ edtf, earliest: start.year, latest: end.year, start, end, ...days });
  }
  return fail({ field, rule: "edtf-date-or-interval", received: received(text) });
}

function dayOf(date: Date | undefined): string | null {
  return date ? (date.toISOString().split("T")[0] ?? null) : null;
}

function bound(part: Part | null, edge: "min" | "max", open: boolean): Bound {
  const date = part?.[edge];
  const q = part?.qualification;
  return {
    year: date ? date.getUTCFullYear() : null,
    open,
    approximate: q?.approximate === true || q?.uncertainApproximate === true,
    uncertain: q?.uncertain === true || q?.uncertainApproximate === true,
  };
}
