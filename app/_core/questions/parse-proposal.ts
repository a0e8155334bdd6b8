import { isSlug } from "../entries/slug.ts";
import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { type Answer, BASES, type Proposed } from "./question.ts";
import { type Typed, TypedReader } from "./typed-text.ts";

export const PROPOSAL_FIELDS = ["entry", "maker", "mark", "period", "reasons", "basis", "name"] as const;

/** Signs that a reason must have at least: fewer name no reason. */
const SHORTEST_REASON = 20;

/**
 * Reads the form of a proposal; every wrong field is named. With an entry it proposes that entry, without one it
 * says in words which mark it is.
 */
export function parseProposal(typed: Typed): Result<Proposed, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const answer = (typed.entry ?? "").trim() === "" ? readWords(read) : readEntry(read, typed.entry ?? "");
  const reasons = read.text("reasons", { shortest: SHORTEST_REASON, longest: 2000 });
  const basis = read.oneOf("basis", BASES);
  const name = read.line("name", { shortest: 2, longest: 60 });
  if (read.errors.length > 0 || basis === null) return fail(read.errors);
  return ok({ answer, reasons, basis, name });
}

/** Reads why a proposal is declined. */
export function parseDeclineReason(typed: Typed): Result<string, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const reason = read.text("reason", { shortest: SHORTEST_REASON, longest: 1000 });
  return read.errors.length > 0 ? fail(read.errors) : ok(reason);
}

/**
 * The slug in an entry's address, as it is copied from a browser, or a slug itself; null when it is neither.
 * The host in the address is not looked at: a reference may be reached by several names.
 */
export function slugInAddress(text: string): string | null {
  const trimmed = text.trim();
  const found =
    /^(?:https?:\/\/[^/\s]+)?\/entries\/([^/?#\s]+)\/?(?:[?#]\S*)?$/.exec(trimmed)?.[1] ?? trimmed;
  return isSlug(found) ? found : null;
}

function readEntry(read: TypedReader, typed: string): Answer {
  const entry = slugInAddress(typed);
  if (entry === null) read.refuse("entry", "entry-address", typed);
  return { kind: "entry", entry: entry ?? "" };
}

function readWords(read: TypedReader): Answer {
  const mark = read.line("mark", { longest: 200 });
  const maker = read.line("maker", { longest: 120 });
  if (maker === "" && mark === "") read.refuse("mark", "mark-or-maker", "");
  const period = read.line("period", { longest: 100 });
  return { kind: "words", maker, mark, period };
}
