import { readDate } from "../dates/read-date.ts";
import type { FieldError } from "../field-error.ts";
import type { Citation } from "./citation.ts";
import { CITATION_KINDS, DATED_SAYINGS } from "./vocabulary.ts";

/** What names a source, in the order in which it is written. */
export const SOURCE_PARTS = ["kind", "author", "title", "year", "place", "address", "seen"] as const;
/** The parts of a citation: what names the source, and what it dates. */
export const CITATION_PARTS = [...SOURCE_PARTS, "dated", "says"] as const;
export type CitationPart = (typeof CITATION_PARTS)[number];

/** Most signs of each part. */
const LONGEST: Readonly<Record<CitationPart, number>> = {
  kind: 40,
  author: 200,
  title: 300,
  year: 40,
  place: 200,
  address: 500,
  seen: 10,
  dated: 60,
  says: 40,
};

type Refuse = (part: CitationPart, rule: string, value: string, params?: FieldError["params"]) => void;

/**
 * Reads one citation. Author or body and title are needed; of a web page also its address and the day it was seen on.
 * @param parts tidy texts, each on one line
 */
export function readCitation(
  parts: Readonly<Partial<Record<CitationPart, string>>>,
  refuse: Refuse,
): Citation {
  const take = (part: CitationPart) => parts[part] ?? "";
  for (const part of CITATION_PARTS) {
    const length = [...take(part)].length;
    if (length > LONGEST[part]) refuse(part, "text-longest", take(part), { longest: LONGEST[part], length });
  }
  const kind = CITATION_KINDS.find((each) => each === take("kind"));
  if (!kind) refuse("kind", "one-of", take("kind"), { allowed: CITATION_KINDS.join(", ") });
  for (const part of ["author", "title"] as const) if (take(part) === "") refuse(part, "required", "");
  const web = kind === "web page";
  if (web && !isWebAddress(take("address"))) refuse("address", "web-address", take("address"));
  if (web && !isDay(take("seen"))) refuse("seen", "day", take("seen"));
  for (const part of ["address", "seen"] as const)
    if (kind && !web && take(part) !== "") refuse(part, "web-page-only", take(part));
  const dated = readDated(take("dated"), take("says"), kind === "dated object", refuse);
  return {
    kind: kind ?? "book",
    author: take("author"),
    title: take("title"),
    year: take("year"),
    place: take("place"),
    address: take("address"),
    seen: take("seen"),
    ...(dated ? { dated } : {}),
  };
}

/** What a source dates: when, and what that says of the use; both or neither, and always of a dated object. */
function readDated(text: string, said: string, isNeeded: boolean, refuse: Refuse): Citation["dated"] | null {
  if (text === "" && (isNeeded || said !== "")) refuse("dated", "required", "");
  if (text === "") return null;
  const says = DATED_SAYINGS.find((each) => each === said);
  if (!says) refuse("says", "one-of", said, { allowed: DATED_SAYINGS.join(", ") });
  const date = readDate(text, "dated");
  if (!date.ok) refuse("dated", date.error.rule, text, date.error.params);
  return says && date.ok ? { edtf: date.value.interval.edtf, says } : null;
}

/** A part of a citation as it would be typed. */
export function citationPart(citation: Citation, part: CitationPart): string {
  if (part === "dated") return citation.dated?.edtf ?? "";
  return part === "says" ? (citation.dated?.says ?? "") : citation[part];
}

const isWebAddress = (text: string): boolean => /^https?:\/\/[^\s/?#@]+\.[^\s/?#@]+([/?#]\S*)?$/i.test(text);

/** Is it a day of the calendar, YYYY-MM-DD? */
function isDay(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  if (!year || !month || !day) return false;
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  return date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day);
}
