import { boundDate } from "../../dating/bound-date.ts";
import type { HardBounds } from "../../dating/bounds.ts";
import { type Said, withDatesWorded } from "../derived.ts";
import type { Phrase, ReportBlock } from "./blocks.ts";
import type { Room } from "./room.ts";

/** A message of the report's own. */
export const msg = (key: string, params?: Readonly<Record<string, Phrase | number>>): Phrase =>
  params === undefined ? { key: `objectReport.${key}` } : { key: `objectReport.${key}`, params };

/** A word of one of the lists, as the file's pages say it. */
export const word = (list: string, value: string): Phrase => ({ key: `objectPages.${list}.${value}` });

/** What is not empty, in a row. */
export function row(parts: readonly Phrase[], joined = ". "): Phrase {
  return { row: parts.filter((part) => part !== ""), joined };
}

/** A derived sentence; its dates are made into words first. */
export function said(group: string, { is, params }: Said): Phrase {
  return {
    key: `objects.${group}.${is}`,
    params: withDatesWorded<Phrase>(params, (edtf) => ({ edtf })),
  };
}

/** A date in words, as it was told where nobody could read it, or that it is not known. */
export function when(edtf: string | null, typed = ""): Phrase {
  if (edtf !== null) return { edtf };
  return typed === "" ? { key: "period.unknown" } : typed;
}

/** "not before 1914, not after August 1922". */
export function boundsPhrase({ notBefore, notAfter }: HardBounds): Phrase {
  if (!notBefore && !notAfter) return { key: "dating.noBounds" };
  const end = (key: string, day: string, which: "first" | "last"): Phrase => ({
    key: `dating.${key}`,
    params: { day: { edtf: boundDate(day, which) } },
  });
  return row(
    [
      notBefore ? end("notBefore", notBefore.day, "first") : "",
      notAfter ? end("notAfter", notAfter.day, "last") : "",
    ],
    ", ",
  );
}

/** Years, both counted in. */
export function yearsPhrase(from: number, to: number): Phrase {
  const edtf = (year: number) =>
    year < 0 ? `-${String(-year).padStart(4, "0")}` : String(year).padStart(4, "0");
  return { edtf: from === to ? edtf(from) : `${edtf(from)}/${edtf(to)}` };
}

/** The first of a list, and a note of how many more the file has. */
export function first<T>(
  all: readonly T[],
  most: number,
): readonly [readonly T[], readonly ReportBlock<Phrase>[]] {
  const left = all.length - most;
  return [all.slice(0, most), left > 0 ? [{ is: "note", says: msg("more", { count: left }) }] : []];
}

/** The beginning of a long text; the whole stays in the file. @param most signs, where there is the widest room */
export function beginning(text: string, most: number, { texts }: Pick<Room, "texts">): Phrase {
  const cut = cutAt(text, Math.max(most * texts, Math.min(most, SHORT)));
  return cut === text ? text : msg("shortened", { text: cut, words: wordsIn(text) });
}

/** Signs of a text that are never cut, however little room there is. */
const SHORT = 90;

/** A name or a place, which are seldom long: cut without a word where they are. */
export function brief(text: string, { texts }: Pick<Room, "texts">): string {
  const cut = cutAt(text, Math.max(200 * texts, SHORT));
  return cut === text ? text : `${cut}…`;
}

/** As many whole words as there is room for. */
export function cutAt(text: string, most: number): string {
  if (text.length <= most) return text;
  const space = text.lastIndexOf(" ", most);
  return text.slice(0, space > most / 2 ? space : Math.floor(most)).trimEnd();
}

export const wordsIn = (text: string): number => text.split(/\s+/).filter((word) => word !== "").length;
