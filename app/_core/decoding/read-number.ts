import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";

/** Words that stand before a number of any kind. */
const NEUTRAL = new Set(
  "US U S USA UK GB BRITISH PAT PATS PATD PATENT PATENTS PATENTED NO NOS NUM NUMBER NR N REG REGD REGISTERED REGISTRATION".split(
    " ",
  ),
);

const LONGEST = 40;

/**
 * Reads a patent or registration number as it stands on an object: `Pat. No. 2,717,437`, `Des. 48160`, `RD 285771`.
 * @param own words or letters that belong to this series, such as `D`
 */
export function readNumber(text: string, own: readonly string[] = []): Result<number, FieldError> {
  const typed = text.normalize("NFKC").trim().toUpperCase();
  const refused = (rule: string, params?: FieldError["params"]): Result<number, FieldError> =>
    fail({ field: "number", rule, received: received(text), ...(params ? { params } : {}) });
  if (typed === "") return refused("number-missing");
  const [, before = "", digits = ""] =
    /^([^\d]*)(\d+|\d{1,3}(?:[ ,.]\d{3})+)(?: ?[AB][12]?)?\.?$/.exec(typed) ?? [];
  if (typed.length > LONGEST || digits === "" || !/^(?:[A-Z .:#°/]|(?<=[A-Z])-)*$/.test(before))
    return refused("number-on-object");
  const foreign = (before.match(/[A-Z]+/g) ?? []).find((word) => !NEUTRAL.has(word) && !own.includes(word));
  if (foreign !== undefined) return refused("other-series", { prefix: foreign });
  return ok(Number(digits.replace(/\D/g, "")));
}
