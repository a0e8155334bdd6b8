import { fail, ok, type Result } from "../result.ts";
import { compareDays, type Day } from "./day.ts";
import { type OneDate, readOneDate } from "./one-date.ts";

/** One end of an interval: a date, or none because it is open or nobody knows it. */
export type End = OneDate | "open" | "unknown";
/** A member of a set: one date, the dates from one to another, or all before or after one. */
export type Span = { readonly from: OneDate | "open"; readonly to: OneDate | "open" };

/** What an EDTF text says. */
export type Edtf =
  | { readonly is: "date"; readonly date: OneDate }
  | { readonly is: "interval"; readonly start: End; readonly end: End }
  | { readonly is: "one of" | "all of"; readonly members: readonly Span[] };

export type EdtfFault = "edtf" | "edtf-order";

/**
 * Reads an EDTF text, levels 0 and 1 and of level 2 all but years within sets of sets.
 * Source: Library of Congress, Extended Date/Time Format specification, 4 February 2019.
 */
export function readEdtf(text: string): Result<Edtf, EdtfFault> {
  const set = /^([[{])(.*)([\]}])$/.exec(text);
  if (set) return readSet(set[1] === "[" ? "one of" : "all of", set[2] ?? "", `${set[1]}${set[3]}`);
  const ends = text.split("/");
  if (ends.length > 2) return fail("edtf");
  if (ends.length === 2) return readInterval(ends[0] ?? "", ends[1] ?? "");
  const date = readOneDate(text);
  return date ? ok({ is: "date", date }) : fail("edtf");
}

function readInterval(first: string, second: string): Result<Edtf, EdtfFault> {
  const start = readEnd(first);
  const end = readEnd(second);
  if (start === null || end === null || (first === "" && second === "")) return fail("edtf");
  // An interval ends no earlier than it begins; an end named less finely reaches to its last day.
  if (isDate(start) && isDate(end) && compareDays(end.last, start.first) < 0) return fail("edtf-order");
  return ok({ is: "interval", start, end });
}

function readEnd(text: string): End | null {
  if (text === "") return "unknown";
  if (text === "..") return "open";
  const date = readOneDate(text);
  // Intervals are of dates: the specification leaves times of day out of them.
  return date?.timeOfDay === null ? date : null;
}

function readSet(is: "one of" | "all of", inside: string, brackets: string): Result<Edtf, EdtfFault> {
  if (brackets !== "[]" && brackets !== "{}") return fail("edtf");
  const members: Span[] = [];
  const texts = inside.split(",");
  for (const [i, text] of texts.entries()) {
    const member = readMember(text, i === 0, i === texts.length - 1);
    if (member === null) return fail("edtf");
    const { from, to } = member;
    if (isDate(from) && isDate(to) && compareDays(to.last, from.first) < 0) return fail("edtf-order");
    members.push(member);
  }
  return ok({ is, members });
}

/** Only the first member may be "and all before", only the last "and all after". */
function readMember(text: string, isFirst: boolean, isLast: boolean): Span | null {
  const [left = "", right, more] = text.split("..");
  if (more !== undefined) return null;
  const from = left === "" && isFirst && right ? "open" : readOneDate(left);
  if (right === undefined) return from === null ? null : { from, to: from };
  const to = right === "" && isLast && left ? "open" : readOneDate(right);
  return from === null || to === null ? null : { from, to };
}

export function isDate(end: End | null): end is OneDate {
  return end !== null && end !== "open" && end !== "unknown";
}

/** The dates that bear the marks of the two ends: of a set, those of its outer members. */
export function endsOf(read: Edtf): readonly [End, End] {
  if (read.is === "date") return [read.date, read.date];
  if (read.is === "interval") return [read.start, read.end];
  return [read.members[0]?.from ?? "unknown", read.members.at(-1)?.to ?? "unknown"];
}

/** The first and the last day a text can mean; null where it is open or unknown. */
export function spanOf(edtf: Edtf): { readonly first: Day | null; readonly last: Day | null } {
  if (edtf.is === "date") return { first: edtf.date.first, last: edtf.date.last };
  if (edtf.is === "interval") {
    return {
      first: isDate(edtf.start) ? edtf.start.first : null,
      last: isDate(edtf.end) ? edtf.end.last : null,
    };
  }
  const days = (edge: "from" | "to") =>
    edtf.members
      .map((m) => m[edge])
      .map((end) => (isDate(end) ? end[edge === "from" ? "first" : "last"] : null));
  return { first: outermost(days("from"), -1), last: outermost(days("to"), 1) };
}

function outermost(days: readonly (Day | null)[], way: 1 | -1): Day | null {
  if (days.includes(null)) return null;
  return days.reduce((a, b) => (a && b && way * compareDays(b, a) > 0 ? b : a), days[0] ?? null);
}
