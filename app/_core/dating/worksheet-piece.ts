import { parseInterval } from "../dates/parse.ts";
import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Basis, DatedEvent, EvidenceKind } from "./evidence.ts";
import type { Piece } from "./piece.ts";

/** The codes of an address. They are part of links that people keep: never change one, only add. */
const KINDS: Readonly<Record<EvidenceKind, string>> = {
  mark: "mk",
  wording: "wo",
  number: "nu",
  hallmark: "hm",
  "catalogue-line": "cl",
  material: "ma",
  construction: "co",
  maker: "mr",
  story: "st",
  photograph: "ph",
  repair: "re",
  address: "ad",
  other: "ot",
};
const EVENTS: Readonly<Record<DatedEvent, string>> = {
  made: "m",
  marked: "k",
  labelled: "l",
  sold: "s",
  given: "g",
  owned: "o",
  photographed: "p",
  repaired: "r",
};
const BASES: Readonly<Record<Basis, string>> = { published: "p", "from-memory": "m", "common-practice": "c" };

export const PIECE_LIMITS = {
  reason: 300,
  source: 300,
  exceptions: 300,
  alternatives: 24,
  group: 12,
} as const;

/**
 * `kind*event*date*thousandths*basis*group*reason*source*exceptions*other dates`, empty ends left out. `*` and `_` stay
 * as they are in an address; in a text `_` is written `__` and `*` is written `_-`.
 */
export function writePiece(piece: Piece): string {
  const parts = [
    KINDS[piece.kind],
    EVENTS[piece.event],
    piece.edtf,
    String(Math.round(piece.reliability * 1000)),
    piece.basis ? BASES[piece.basis] : "",
    piece.group ?? "",
    piece.reason,
    piece.source,
    piece.exceptions,
    piece.alternatives.join(";"),
  ];
  return parts.map(escaped).join("*").replace(/\*+$/, "");
}

const escaped = (text: string) => text.replaceAll("_", "__").replaceAll("*", "_-");
const unescaped = (text: string) => text.replace(/__|_-/g, (pair) => (pair === "__" ? "_" : "*"));

/** @param place which piece of the worksheet it is, from 1, for the error */
export function readPiece(text: string, place: number): Result<Piece, FieldError> {
  const parts = text.split("*").map(unescaped);
  const [kindCode, eventCode, edtf = "", thousandths, basisCode = "", group = "", ...texts] = parts;
  const [reason = "", source = "", exceptions = "", others = ""] = texts;
  const refuse = (part: string, value: string): Result<Piece, FieldError> =>
    fail({ field: "evidence", rule: `worksheet-${part}`, received: received(value), params: { place } });
  const kind = codeOf(KINDS, kindCode);
  const event = codeOf(EVENTS, eventCode);
  const basis = basisCode === "" ? null : codeOf(BASES, basisCode);
  const reliability = /^\d{3}$/.test(thousandths ?? "") ? Number(thousandths) / 1000 : Number.NaN;
  const alternatives = others === "" ? [] : others.split(";");
  if (kind === undefined) return refuse("kind", kindCode ?? "");
  if (event === undefined) return refuse("event", eventCode ?? "");
  if (!parseInterval(edtf).ok) return refuse("date", edtf);
  if (!(reliability >= 0.5 && reliability <= 0.999)) return refuse("reliability", thousandths ?? "");
  if (basis === undefined) return refuse("basis", basisCode);
  const tooLong =
    reason.length > PIECE_LIMITS.reason ||
    source.length > PIECE_LIMITS.source ||
    exceptions.length > PIECE_LIMITS.exceptions ||
    group.length > PIECE_LIMITS.group;
  if (tooLong || texts.length > 4) return refuse("text", text);
  const wrong = alternatives.find((each) => !parseInterval(each).ok);
  if (wrong !== undefined || alternatives.length > PIECE_LIMITS.alternatives)
    return refuse("date", wrong ?? others);
  const texted = { reason, source, exceptions, group: group === "" ? null : group };
  return ok({ kind, event, edtf, reliability, basis, ...texted, alternatives });
}

function codeOf<T extends string>(
  codes: Readonly<Record<T, string>>,
  code: string | undefined,
): T | undefined {
  return (Object.keys(codes) as T[]).find((each) => codes[each] === code);
}
