import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { ONE, plainLetters, SEVERAL } from "./plain-letters.ts";

/** What somebody could read on a mark, ready to be compared. */
export type LegibleLetters = {
  /** As it was typed, for showing it again. */
  readonly typed: string;
  /** Plain letters, with `?` for one that is unreadable and `*` for several. */
  readonly pattern: string;
  /** How many signs of the pattern were read. */
  readonly legible: number;
};

/** Signs of a reading; the longest mark in ordinary use, a full address, keeps well below. */
const LONGEST_READING = 200;

/**
 * Reads what somebody typed of a mark: letters, digits and `&`; `?` for one unreadable letter; `*`, `[...]` or `…`
 * for several. Capitals, accents, interpuncts, spaces and line breaks (`/`) do not matter.
 * @returns null when nothing was typed; rule `letters-legible` when nothing of it is a letter, `letters-length` when
 * it is too long
 */
export function parseLegibleLetters(
  typed: string,
  field = "letters",
): Result<LegibleLetters | null, FieldError> {
  const trimmed = typed.trim();
  if (trimmed === "") return ok(null);
  if (trimmed.length > LONGEST_READING)
    return fail({
      field,
      rule: "letters-length",
      received: received(trimmed),
      params: { longest: LONGEST_READING },
    });
  const pattern = plainLetters(trimmed, { wildcards: true });
  const legible = [...pattern].filter((sign) => sign !== ONE && sign !== SEVERAL).length;
  if (legible === 0) return fail({ field, rule: "letters-legible", received: received(trimmed) });
  return ok({ typed: trimmed, pattern, legible });
}
