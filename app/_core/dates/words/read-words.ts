import { plainText } from "./plain-text.ts";
import { readSingle } from "./single-forms.ts";

const ABOUT =
  /^(?:ca?\.?\s*(?=\d{3})|ca?\.\s*(?=[a-z\d])|ca\s+|circa|about|around|roughly|approx(?:imately|\.)?|near|nearly)\s*/;
const PERHAPS = /^(?:probably|prob\.|possibly|perhaps|maybe|likely|presumably)\s+/;
const ABOUT_AFTER = /\s+(?:or so|or thereabouts|approx\.?|circa)$/;
const PERHAPS_AFTER = /\s*(?:\(\?\)|\?|\(probably\)|\(uncertain\))$/;

const BEFORE =
  /^(?:(?:in or )?before|until|till|up to|to|by|not (?:after|later than)|no later than|prior to|earlier than|pre-?)\s*(?=[a-z\d])/;
const AFTER =
  /^(?:(?:in or )?after|from|since|not (?:before|earlier than)|no earlier than|later than|post-?)\s*(?=[a-z\d])/;
const ON_FROM = /(?:\s*\+|\s*-|,?\s+(?:onwards?|on|(?:or|and) (?:later|after)))$/;
const BACK_FROM = /,?\s+(?:or|and) (?:earlier|before)$/;

const SEPARATOR = /\s*(?:-|\.\.|\bto\b|\buntil\b|\btill\b|\bthrough\b|\/)\s*/g;
const BETWEEN = /^(?:between|from)\s+(.+?)\s+(?:and|to|until|till|-)\s+(.+)$/;
const LONGEST = 120;

type Marks = { readonly about: boolean; readonly perhaps: boolean };

/**
 * What somebody means who writes a date or a period the ordinary way, in EDTF; null when it isn't understood.
 * Whether the result can be a date at all (31 June) is for whoever reads it as EDTF.
 */
export function readWords(typed: string): string | null {
  if (typed.length > LONGEST) return null;
  if (/^\s*[[{]/.test(typed)) return typed.replaceAll(/\s/g, "");
  const text = plainText(typed);
  const [rest, marks] = takeMarks(text);
  return (
    readBetween(rest, marks) ??
    markedSingle(rest, marks) ??
    readOpen(rest, marks) ??
    readRange(rest, marks) ??
    readChoice(rest, marks)
  );
}

function takeMarks(text: string, marks: Marks = { about: false, perhaps: false }): readonly [string, Marks] {
  const without = (form: RegExp, next: Partial<Marks>) =>
    form.test(text) ? takeMarks(text.replace(form, ""), { ...marks, ...next }) : null;
  return (
    without(ABOUT, { about: true }) ??
    without(ABOUT_AFTER, { about: true }) ??
    without(PERHAPS, { perhaps: true }) ??
    without(PERHAPS_AFTER, { perhaps: true }) ?? [text, marks]
  );
}

/** A single date or period, with the marks of what it stands in added to its own. */
function markedSingle(text: string, outer: Marks): string | null {
  const [rest, marks] = takeMarks(text, outer);
  const single = readSingle(rest);
  if (single === null) return null;
  if (single.startsWith("[")) return marks.about || marks.perhaps ? null : single;
  return single
    .split("/")
    .map((date) => mark(date, marks))
    .join("/");
}

function mark(date: string, { about, perhaps }: Marks): string {
  const isAbout = about || date.endsWith("~");
  const plain = date.replace(/~$/, "");
  return `${plain}${isAbout ? (perhaps ? "%" : "~") : perhaps ? "?" : ""}`;
}

const firstOf = (edtf: string) => edtf.split("/")[0] ?? edtf;
const lastOf = (edtf: string) => edtf.split("/").at(-1) ?? edtf;

function readBetween(text: string, marks: Marks): string | null {
  const [, left, right] = BETWEEN.exec(text) ?? [];
  return left && right ? joined(left, right, marks) : null;
}

function readRange(text: string, marks: Marks): string | null {
  for (const found of text.matchAll(SEPARATOR)) {
    const left = text.slice(0, found.index);
    const right = text.slice(found.index + found[0].length);
    const range = left && right ? joined(left, right, marks) : null;
    if (range) return range;
  }
  return null;
}

/** Two ends, of which one may leave out what the other says: 1905-10, March to August 1922, 12-14 March 1911. */
function joined(left: string, right: string, marks: Marks): string | null {
  const start = markedSingle(left, marks) ?? markedSingle(completeStart(left, right), marks);
  const end = markedSingle(completeEnd(left, right), marks) ?? markedSingle(right, marks);
  if (start === null || end === null || start.startsWith("[") || end.startsWith("[")) return null;
  return `${firstOf(start)}/${lastOf(end)}`;
}

function completeStart(left: string, right: string): string {
  if (/ bce$/.test(right) && /^\d+$/.test(left)) return `${left} bce`;
  const century = /\s(?:century|centuries|cent\.?|c\.?)$/.exec(right);
  if (century && !/century|cent/.test(left)) return `${left}${century[0]}`;
  if (/^\d{1,2}(?:st|nd|rd|th)?$/.test(left)) return right.replace(/^\d{1,2}(?:st|nd|rd|th)?/, left);
  const year = /\s\d{4}$/.exec(right);
  return year ? `${left}${year[0]}` : left;
}

function completeEnd(left: string, right: string): string {
  const decade = /(\d\d)\d0'?s$/.exec(left)?.[1];
  if (decade && /^'?\d0'?s$/.test(right)) return `${decade}${right.replace(/^'/, "")}`;
  const year = /(\d{4})$/.exec(left)?.[1];
  // A year shortened to what changed: 1905-10 and 1905-7, but not 1905-03.
  if (!year || !/^\d{1,2}$/.test(right)) return right;
  return `${year.slice(0, 4 - right.length)}${right}`;
}

function readOpen(text: string, marks: Marks): string | null {
  const [form, isAfter] = (
    [
      [BEFORE, false],
      [AFTER, true],
      [BACK_FROM, false],
      [ON_FROM, true],
    ] as const
  ).find(([each]) => each.test(text)) ?? [null, false];
  const date = form && markedSingle(text.replace(form, ""), marks);
  if (!date || date.startsWith("[")) return null;
  // "Before" and "after" are outside what they name: the 1920s begin in 1920. A year or a day itself still counts.
  const isInside =
    form === BACK_FROM ||
    form === ON_FROM ||
    /^(?:in or|by|until|till|up to|to|from|since|not|no)\b/.test(text);
  const edges = isInside ? [lastOf(date), firstOf(date)] : [firstOf(date), lastOf(date)];
  return isAfter
    ? `${isInside ? edges[1] : outer(edges[1] ?? date, "9")}/..`
    : `../${isInside ? edges[0] : outer(edges[0] ?? date, "0")}`;
}

const outer = (date: string, digit: string) => date.replaceAll("X", digit);

function readChoice(text: string, marks: Marks): string | null {
  for (const [word, open, close] of [
    [" or ", "[", "]"],
    [" and ", "{", "}"],
  ] as const) {
    const members = text
      .split(new RegExp(`, (?=.*${word})|${word}`))
      .map((each) => markedSingle(each, marks));
    if (members.length > 1 && members.every((each) => each !== null && !/[/[]/.test(each)))
      return `${open}${members.join(",")}${close}`;
  }
  return null;
}
