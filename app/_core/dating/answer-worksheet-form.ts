import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Piece } from "./piece.ts";
import { EVIDENCE_FIELDS, type EvidenceForm, formOf, readEvidenceForm } from "./read-evidence-form.ts";
import { type AddressParams, readWorksheet } from "./read-worksheet.ts";
import { addressOf, WORKSHEET_LIMITS, type Worksheet } from "./worksheet.ts";

/** What the page of a worksheet begins with. */
export type WorksheetState = {
  readonly worksheet: Worksheet;
  readonly form: EvidenceForm;
  /** The date in words that was shown as it is understood, and is taken when it comes again. */
  readonly shown: string;
  /** Which piece the form changes, from 1; null when it adds one. */
  readonly editing: number | null;
  readonly errors: readonly FieldError[];
};
export type WorksheetAnswer = { readonly go: string } | { readonly state: WorksheetState };

/**
 * Answers the plain form of a worksheet, which sends the whole sheet with a piece to add: where the finished sheet is, or
 * what to show. A date in words is shown as it is understood before it is taken.
 */
export function answerWorksheetForm(params: AddressParams): WorksheetAnswer {
  const { worksheet, errors } = readWorksheet(params);
  const editing = placeIn(worksheet, text(params.edit));
  const act = text(params.act);
  if (act === "head" && errors.length === 0) return { go: addressOf(worksheet) };
  if (act !== "add") {
    const piece = editing === null ? undefined : worksheet.pieces[editing - 1];
    return {
      state: { worksheet, form: piece ? formOf(piece) : typedForm(params), shown: "", editing, errors },
    };
  }
  const form = typedForm(params);
  const read = readEvidenceForm(form);
  const when = form.when ?? "";
  const isPlain = read.date?.understood === "edtf" && read.date.orElse === null;
  const isTaken = errors.length === 0 && (isPlain || text(params.shown) === when);
  const next = read.piece && isTaken ? withPiece(worksheet, read.piece, editing) : null;
  if (next?.ok) return { go: `${addressOf(next.value)}#evidence` };
  const wrong = next ? [next.error] : read.errors;
  return { state: { worksheet, form, shown: read.date ? when : "", editing, errors: [...errors, ...wrong] } };
}

/** The worksheet with a piece added, or changed in its place; refused when it would no longer fit an address. */
export function withPiece(
  worksheet: Worksheet,
  piece: Piece,
  editing: number | null,
): Result<Worksheet, FieldError> {
  const { pieces } = worksheet;
  const changed = editing === null ? undefined : pieces[editing - 1];
  // What the form has no field for stays with a piece as long as its date does.
  const kept = changed && changed.edtf === piece.edtf ? { alternatives: changed.alternatives } : {};
  const whole = changed ? { ...piece, exceptions: changed.exceptions, ...kept } : piece;
  const next = {
    ...worksheet,
    pieces: changed ? pieces.map((each) => (each === changed ? whole : each)) : [...pieces, whole],
  };
  const refuse = (rule: string, value: number, most: number) =>
    fail({ field: "worksheet", rule, received: received(String(value)), params: { most } });
  if (next.pieces.length > WORKSHEET_LIMITS.pieces)
    return refuse("worksheet-most", next.pieces.length, WORKSHEET_LIMITS.pieces);
  const { length } = addressOf(next);
  return length > WORKSHEET_LIMITS.address
    ? refuse("worksheet-long", length, WORKSHEET_LIMITS.address)
    : ok(next);
}

export function withoutPieceAt(worksheet: Worksheet, place: number): Worksheet {
  return { ...worksheet, pieces: worksheet.pieces.filter((_, i) => i !== place - 1) };
}

function placeIn({ pieces }: Worksheet, typed: string): number | null {
  const place = Number(typed);
  return Number.isInteger(place) && place >= 1 && place <= pieces.length ? place : null;
}

function typedForm(params: AddressParams): EvidenceForm {
  return Object.fromEntries(EVIDENCE_FIELDS.map((field) => [field, text(params[field]).slice(0, 400)]));
}

function text(value: AddressParams[string]): string {
  return ((typeof value === "string" ? value : value?.[0]) ?? "").replaceAll("\0", "");
}
