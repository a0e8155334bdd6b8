import type { ReadDate } from "../dates/read-date.ts";
import { readDate } from "../dates/read-date.ts";
import { type FieldError, received } from "../field-error.ts";
import { type Basis, DATED_EVENTS, EVIDENCE_KINDS } from "./evidence.ts";
import type { Piece } from "./piece.ts";
import { USUAL } from "./usual-evidence.ts";

import { PIECE_LIMITS } from "./worksheet-piece.ts";

/** The fields of the form that adds a piece of evidence, as they are typed. */
export const EVIDENCE_FIELDS = [
  "kind",
  "when",
  "event",
  "sure",
  "reason",
  "source",
  "basis",
  "group",
] as const;
export type EvidenceForm = Readonly<Partial<Record<(typeof EVIDENCE_FIELDS)[number], string>>>;
export const GROUPS = ["A", "B", "C", "D", "E"] as const;
export const BASIS_CHOICES: readonly Basis[] = ["published", "from-memory", "common-practice"];

export type ReadEvidence = {
  /** What the date was read as; null when it could not be. */
  readonly date: ReadDate | null;
  /** Null while something is wrong. */
  readonly piece: Piece | null;
  readonly errors: readonly FieldError[];
};

/** Reads a piece of evidence as typed. What is left to the usual goes by the kind. */
export function readEvidenceForm(form: EvidenceForm): ReadEvidence {
  const errors: FieldError[] = [];
  const refuse = (field: string, rule: string, params?: FieldError["params"]) =>
    errors.push({ field, rule, received: received(typed(form, field)), ...(params ? { params } : {}) });
  const kind = EVIDENCE_KINDS.find((each) => each === typed(form, "kind"));
  if (!kind) refuse("kind", "one-of", { allowed: EVIDENCE_KINDS.join(", ") });
  const date = readDate(typed(form, "when"), "when");
  if (!date.ok) errors.push(date.error);
  const event =
    typed(form, "event") === ""
      ? kind && USUAL[kind].event
      : DATED_EVENTS.find((each) => each === form.event);
  if (kind && !event) refuse("event", "one-of", { allowed: DATED_EVENTS.join(", ") });
  const sure =
    typed(form, "sure") === ""
      ? kind && USUAL[kind].reliability
      : Number(typed(form, "sure").replace(",", "."));
  if (sure !== undefined && !(sure >= 0.5 && sure <= 0.999)) refuse("sure", "reliability");
  for (const field of ["reason", "source"] as const)
    if (typed(form, field).length > PIECE_LIMITS[field])
      refuse(field, "text-length", { longest: PIECE_LIMITS[field] });
  const basis = BASIS_CHOICES.find((each) => each === form.basis) ?? null;
  const group = GROUPS.find((each) => each === form.group) ?? null;
  const whole = errors.length === 0 && kind && event && sure && date.ok;
  const piece: Piece | null = whole
    ? {
        kind,
        event,
        edtf: date.value.interval.edtf,
        reliability: Math.round(sure * 1000) / 1000,
        reason: typed(form, "reason"),
        source: typed(form, "source"),
        basis,
        exceptions: "",
        group,
        alternatives: [],
      }
    : null;
  return { date: date.ok ? date.value : null, piece, errors };
}

/** The form that would give a piece, to change it. */
export function formOf(piece: Piece): EvidenceForm {
  return {
    kind: piece.kind,
    when: piece.edtf,
    event: piece.event,
    sure: String(piece.reliability),
    reason: piece.reason,
    source: piece.source,
    basis: piece.basis ?? "",
    group: piece.group ?? "",
  };
}

const typed = (form: EvidenceForm, field: string) => (form[field as keyof EvidenceForm] ?? "").trim();
