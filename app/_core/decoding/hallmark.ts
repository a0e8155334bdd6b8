import type { DatedStatement } from "../dating/evidence.ts";
import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { spanOfLetter } from "./date-letter.ts";
import type { Decoded, Note } from "./decoded.ts";
import { exceptionsOf, fillReason, sayDay } from "./fill-reason.ts";
import {
  CYCLES,
  HALLMARK_REMARKS,
  type HallmarkRow,
  isSmall,
  LETTER_STYLES,
  type LetterCycle,
  OFFICES,
  OTHER_MARKS,
  STANDARDS,
} from "./hallmark-table.ts";
import { noteMarks } from "./note-marks.ts";
import { RELIABILITY } from "./reliability-policy.ts";

/** What can be read of a British hallmark; everything may be missing, but not all of it. */
export type HallmarkInput = {
  readonly office?: string;
  readonly letter?: string;
  readonly style?: string;
  /** Id of a standard mark. */
  readonly standard?: string;
  /** Ids of marks beside: the duty mark, the mark of foreign plate. */
  readonly others?: readonly string[];
};

type Read = {
  readonly office: HallmarkRow | undefined;
  readonly letter: string;
  readonly style: string;
  readonly standard: HallmarkRow | undefined;
  readonly others: readonly HallmarkRow[];
};

/** British hallmarks: the letter gives the years in which it was struck, the other marks limit them. */
export function decodeHallmark(input: HallmarkInput): Result<Decoded, FieldError> {
  const read = readHallmark(input);
  if (!read.ok) return read;
  const { office, letter, style, standard, others } = read.value;
  const limits = [office, standard, ...others].flatMap((row) => (row?.edtf ? stateMark(row) : []));
  const about: readonly Note[] = [...noteMarks(office, standard), ...remarks(letter)];
  if (letter === "") return ok({ statements: limits, alternatives: [], notes: about });
  const cycles = CYCLES.filter((cycle) => !office || cycle.office === office.office);
  if (cycles.length === 0)
    return ok({
      statements: limits,
      alternatives: [],
      notes: [{ is: "no-letters", params: { office: office?.office ?? "" } }, ...about],
    });
  const found = cycles
    .filter((cycle) => style === "" || cycle.style === style)
    .flatMap((cycle) => stateLetter(cycle, letter));
  if (found.length === 0) return fail(letterUnknown(read.value, cycles));
  const possible = found.filter((each) => limits.every((limit) => canBoth(each.edtf, limit.edtf)));
  const kept = possible.length === 0 ? found : possible;
  const notes: readonly Note[] = [
    ...(possible.length === 0 ? [{ is: "contradiction" as const }] : []),
    ...(kept.length < found.length
      ? [{ is: "narrowed" as const, params: { left: kept.length, of: found.length } }]
      : []),
    ...(style === "" && kept.length > 1 ? [{ is: "without-style" as const, params: { letter } }] : []),
    ...(kept.length > 1 ? [{ is: "no-shields" as const }] : []),
    ...about,
  ];
  const sorted = sortByCase(kept, letter);
  return ok(
    sorted.length === 1
      ? { statements: [...sorted, ...limits], alternatives: [], notes }
      : { statements: limits, alternatives: sorted, notes },
  );
}

function readHallmark(input: HallmarkInput): Result<Read, FieldError> {
  const text = (value: string | undefined) => (value ?? "").normalize("NFKC").trim();
  const [office, letter, style, standard] = [input.office, input.letter, input.style, input.standard].map(
    text,
  );
  const one = <T>(field: string, value: string, all: readonly T[], name: (each: T) => string) => {
    const found = all.find((each) => name(each) === value);
    const params = { allowed: all.map(name).join(", ") };
    return value === "" || found !== undefined
      ? ok(found)
      : fail({ field, rule: "one-of", received: received(value), params });
  };
  const offices = one("office", office ?? "", OFFICES, (row) => row.office ?? "");
  if (!offices.ok) return offices;
  const styles = one("style", style ?? "", LETTER_STYLES, (each) => each);
  if (!styles.ok) return styles;
  const standards = one("standard", standard ?? "", STANDARDS, ({ id }) => id);
  if (!standards.ok) return standards;
  const others = [];
  for (const id of input.others ?? []) {
    const other = one("others", id, OTHER_MARKS, (row) => row.id);
    if (!other.ok) return other;
    if (other.value) others.push(other.value);
  }
  if (!/^\p{L}?$/u.test(letter ?? ""))
    return fail({ field: "letter", rule: "one-letter", received: received(letter) });
  if (!letter && !office && !standard && others.length === 0)
    return fail({ field: "letter", rule: "hallmark-empty", received: "" });
  return ok({
    office: offices.value,
    letter: letter ?? "",
    style: styles.value ?? "",
    standard: standards.value,
    others,
  });
}

/** Says besides which letter of which office it is, and how it is drawn. */
export type LetterStatement = DatedStatement & {
  readonly office: string;
  readonly letter: string;
  readonly style: string;
};

function stateLetter(cycle: LetterCycle, letter: string): readonly LetterStatement[] {
  const span = spanOfLetter(cycle, letter);
  if (span === null) return [];
  const shown =
    isSmall(cycle.style) || cycle.style === "court hand" ? letter.toLowerCase() : letter.toUpperCase();
  const { office, style, basis, source, note = "" } = cycle;
  const found = { office, letter: shown, style, from: sayDay(span.from), to: sayDay(span.to) };
  return [
    {
      kind: "hallmark",
      event: "marked",
      edtf: `${span.from}/${span.to}`,
      reliability: RELIABILITY[basis].hard,
      reason: fillReason("hallmark-cycles", "reason", found),
      source,
      basis,
      exceptions: [note, exceptionsOf("hallmark-cycles")].filter((part) => part !== "").join(" "),
      office,
      letter: shown,
      style,
    },
  ];
}

function stateMark(row: HallmarkRow): readonly DatedStatement[] {
  const { edtf = "", strength = "hard", reason = "", basis, source, exceptions = "" } = row;
  const reliability = RELIABILITY[basis][strength];
  return [{ kind: "hallmark", event: "marked", edtf, reliability, reason, source, basis, exceptions }];
}

/** Letters of the case that was typed come first: a small letter may have been read as a capital. */
function sortByCase(found: readonly LetterStatement[], letter: string): readonly LetterStatement[] {
  const typedSmall = letter === letter.toLowerCase();
  const other = ({ style }: LetterStatement) => Number(isSmall(style) !== typedSmall);
  return found.toSorted((a, b) => other(a) - other(b) || a.edtf.localeCompare(b.edtf));
}

/** Can both windows be true? Compared as text, which is right for days of four-figure years. */
function canBoth(a: string, b: string): boolean {
  const [fromA = "", toA = ""] = a.split("/");
  const [fromB = "", toB = ""] = b.split("/");
  const before = (from: string, to: string) => from === ".." || to === ".." || from <= `${to}\uffff`;
  return before(fromA, toB) && before(fromB, toA);
}

function letterUnknown({ letter, office, style }: Read, cycles: readonly LetterCycle[]): FieldError {
  const spans = cycles.filter((cycle) => style === "" || cycle.style === style);
  if (spans.length === 0)
    return {
      field: "style",
      rule: "style-unknown",
      received: style,
      params: {
        office: office?.office ?? "",
        allowed: [...new Set(cycles.map((cycle) => cycle.style))].join(", "),
      },
    };
  const params = {
    fromYear: Math.min(...spans.map(({ first }) => first)),
    toYear: Math.max(...spans.map(({ last }) => last)),
    letters: [...new Set(spans.flatMap(({ letters }) => [...letters]))].toSorted().join(" "),
  };
  return { field: "letter", rule: "letter-unknown", received: letter, params };
}

function remarks(letter: string): readonly Note[] {
  return HALLMARK_REMARKS.filter(({ id }) => (letter !== "") === (id === "change-1975")).flatMap(
    ({ note }): readonly Note[] => (note ? [{ is: "remark", params: { text: note } }] : []),
  );
}
