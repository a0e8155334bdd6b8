import { KINDS, TECHNIQUES } from "../entries/vocabulary.ts";
import { type FieldError, received } from "../field-error.ts";
import type { Typed } from "../questions/typed-text.ts";
import { fail, ok, type Result } from "../result.ts";
import { checkObserved } from "./check-observed.ts";
import { COMMANDS, type CommandName, type FileCommand } from "./commands.ts";
import { FileFields } from "./file-fields.ts";
import { LONGEST } from "./limits.ts";
import { LISTS } from "./object-file.ts";
import { readAnomaly, readFinding, readStance, type Stamp } from "./read-judgement.ts";
import { readLine } from "./read-line.ts";
import { readMatch } from "./read-match.ts";
import { readMeasurement, readOnScreen } from "./read-measurement.ts";
import { readPieces } from "./read-pieces.ts";
import {
  BELONGINGS,
  CONDITIONS,
  DOCUMENTS,
  EVENTS,
  EXTENTS,
  FAMILIES,
  OBSERVED,
  PASSAGES,
  PHOTOGRAPH_OF,
  QUALIFIERS,
  SCAN_TYPES,
} from "./vocabulary.ts";

const line = { longest: LONGEST.line };
const text = { longest: LONGEST.text };

/** Reads a change out of its form; every field that is wrong is named. What was typed is the form's to keep. */
export function readCommand(
  kind: string,
  fields: Typed,
  stamp: Stamp,
): Result<FileCommand, readonly FieldError[]> {
  const name = COMMANDS.find((each) => each === kind);
  if (name === undefined)
    return fail([
      {
        field: "command",
        rule: "one-of",
        received: received(kind),
        params: { allowed: COMMANDS.join(", ") },
      },
    ]);
  const read = new FileFields(fields, stamp.at.slice(0, 10));
  const command = READERS[name](read, stamp);
  return read.errors.length > 0 || command === null ? fail(read.errors) : ok(command);
}

/** Null with an error in the reader. */
type Reader = (read: FileFields, stamp: Stamp) => FileCommand | null;

const READERS: Readonly<Record<CommandName, Reader>> = {
  describe(read) {
    const family = read.oneOf("family", FAMILIES);
    const title = read.line("title", { shortest: 3, ...line });
    const description = read.text("description", text);
    return family && { is: "describe", title, family, description };
  },
  line: (read) => ({ is: "line", line: readLine(read) }),
  photograph(read) {
    const of = read.choice("of", PHOTOGRAPH_OF);
    const item =
      of === "whole" ? null : of === "point" ? read.line("item", { shortest: 1, ...line }) : read.id("item");
    return {
      is: "photograph",
      item: {
        id: read.id(),
        sha256: read.sha256("sha256"),
        width: read.number("width", 1, 100_000),
        height: read.number("height", 1, 100_000),
        shows: read.line("shows", line),
        credit: read.line("credit", line),
        ...{ of, item },
      },
    };
  },
  observation(read) {
    const observed = read.oneOf("observed", OBSERVED);
    const point = read.line("point", line);
    const what = read.line("what", line);
    const option = read.line("option", line);
    const value = read.text("value", text);
    const note = read.text("note", text);
    const id = read.id();
    if (point === "" && what === "") read.refuse("what", "point-or-what", "");
    const wrong = checkObserved({ observed, option, value });
    if (wrong) read.errors.push(wrong);
    if (!observed) return null;
    const item = { id, point: point || null, what, observed, option: option || null, value, note };
    return { is: "observation", item };
  },
  measurement: readMeasurement,
  "measure-on-screen": readOnScreen,
  mark(read) {
    const kind = read.oneOf("kind", KINDS);
    const technique = read.has("technique") ? read.oneOf("technique", TECHNIQUES) : null;
    const item = {
      id: read.id(),
      place: read.line("place", { shortest: 1, ...line }),
      words: read.text("words", text),
      description: read.text("description", text),
      belongs: read.choice("belongs", ["not known", ...BELONGINGS]),
    };
    return kind && { is: "mark", item: { ...item, kind, technique } };
  },
  match: readMatch,
  event(read) {
    const kind = read.oneOf("kind", EVENTS);
    const item = {
      id: read.id(),
      date: read.date("when"),
      dateTyped: read.line("when", line),
      place: read.line("place", line),
      from: read.line("from", line),
      to: read.line("to", line),
      passage: read.choice("passage", PASSAGES),
      qualifier: read.choice("qualifier", QUALIFIERS),
      gapBefore: read.has("gap_before"),
      told: read.text("told", text),
      documents: read.ids("documents"),
    };
    return kind && { is: "event", item: { ...item, kind } };
  },
  order: (read) => ({ is: "order", event: read.id("event"), before: read.optionalId("before") }),
  document(read) {
    const kind = read.oneOf("kind", DOCUMENTS);
    const item = {
      id: read.id(),
      title: read.line("title", { shortest: 1, ...line }),
      date: read.date("when"),
      dateTyped: read.line("when", line),
      transcription: read.text("transcription", { longest: LONGEST.transcription }),
      vouchedBy: read.line("vouched_by", line),
      keptAt: read.line("kept_at", line),
    };
    return kind && { is: "document", item: { ...item, kind } };
  },
  scan(read) {
    const type = SCAN_TYPES.find((each) => each === read.raw("type"));
    if (!type)
      read.refuse("file", "scan-type", read.raw("type"), {
        allowed: "JPEG, PNG, WebP, TIFF, AVIF, GIF",
      });
    const scan = { id: read.id(), sha256: read.sha256("sha256"), name: read.line("name", line) };
    const document = read.id("document");
    return type ? { is: "scan", document, scan: { ...scan, type } } : null;
  },
  pieces: readPieces,
  condition(read) {
    const condition = read.oneOf("condition", CONDITIONS);
    const extent = read.choice("extent", EXTENTS);
    const item = { id: read.id(), extent, place: read.line("place", line), note: read.text("note", text) };
    return condition && { is: "condition", item: { ...item, condition } };
  },
  anomaly: readAnomaly,
  stance: readStance,
  finding: readFinding,
  remove(read) {
    const list = read.oneOf("list", [...LISTS, "scans" as const]);
    const id = read.id();
    if (list === "scans") return { is: "remove", list, id, document: read.id("document") };
    return list && { is: "remove", list, id };
  },
};
