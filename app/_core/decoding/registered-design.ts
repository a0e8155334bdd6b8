import type { DatedStatement } from "../dating/evidence.ts";
import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { NumberInput } from "./decode-number.ts";
import { noteNumber, notInTable, stateNumber } from "./decode-number.ts";
import type { Decoded, Note } from "./decoded.ts";
import { exceptionsOf, fillReason, groupDigits, sayDay } from "./fill-reason.ts";
import { placeNumber, type YearRow } from "./number-table.ts";
import { readNumber } from "./read-number.ts";
import { RELIABILITY } from "./reliability-policy.ts";
import { type Sourced, weakestBasis } from "./sourced.ts";
import before from "./tables/uk-designs-before-1884.json" with { type: "json" };
import designs from "./tables/uk-registered-designs.json" with { type: "json" };

/** A number of the register of 1839 to 1883 whose date is known; the last is only a limit. */
type DatedNumber = Sourced & { readonly number: number; readonly date: string; readonly limit?: boolean };

export const UK_DESIGNS = designs as readonly YearRow[];
const BEFORE_1884 = before as readonly DatedNumber[];
const DESIGN_WORDS = ["RD", "R", "D", "DES", "DESIGN"];

/** British registered designs. The same number was given out twice, once before and once from 1884 on. */
export function decodeRegisteredDesign(input: NumberInput): Result<Decoded, FieldError> {
  const number = readNumber(input.number, DESIGN_WORDS);
  if (!number.ok) return number;
  const place = placeNumber(UK_DESIGNS, number.value);
  if (place === null) return fail(notInTable(UK_DESIGNS, number.value));
  const from1884 = stateNumber("uk-registered-designs", number.value, place);
  // Rd, Regd and Registered are of 1884 and after; a number alone can be of either register.
  const isBare = !/r\W*e?\W*g?\W*d/i.test(input.number);
  const old = isBare ? stateOldNumber(number.value) : null;
  const notes = noteNumber(number.value, place);
  if (old === null) {
    const only: readonly Note[] = isBare ? [{ is: "only-one-series" }] : [];
    return ok({ statements: [from1884], alternatives: [], notes: [...only, ...notes] });
  }
  const two: Note = { is: "two-series", params: { number: groupDigits(number.value) } };
  return ok({ statements: [], alternatives: [old, from1884], notes: [two, ...notes] });
}

/** The register of 1839 to 1883: a few dated numbers, between which a number must stand. */
function stateOldNumber(number: number): DatedStatement | null {
  const at = BEFORE_1884.findLastIndex((row) => row.number <= number);
  const [row, next] = [BEFORE_1884[at], BEFORE_1884[at + 1]];
  if (!row || !next) return null;
  const found = {
    number: groupDigits(number),
    first: groupDigits(row.number),
    from: sayDay(row.date),
    next: groupDigits(next.number),
    to: sayDay(next.date),
  };
  const basis = weakestBasis([row]);
  const shape = number === row.number ? "either" : next.limit ? "last" : "reason";
  return {
    kind: "number",
    event: "marked",
    edtf: `${row.date}/..`,
    reliability: RELIABILITY[basis].hard,
    reason: fillReason("uk-designs-before-1884", shape, found),
    source: next.limit || number === row.number ? row.source : `${row.source}; ${next.source}`,
    basis,
    exceptions: exceptionsOf("uk-designs-before-1884"),
  };
}
