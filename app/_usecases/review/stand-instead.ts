import type { FieldError } from "#core/field-error";
import type { Trails } from "../ports/review.ts";

/** Entries that may stand for one another in a row. */
const LONGEST = 50;

/**
 * Why an entry can't stand instead of another: it is not there, it is the same one, or it leads back to it.
 * @returns null when it can
 */
export async function whyNotInstead(
  trails: Trails,
  entry: string,
  instead: string,
  field: string,
): Promise<FieldError | null> {
  let at: string | null = instead;
  for (let steps = 0; at !== null && steps < LONGEST; steps++) {
    if (at === entry) return { field, rule: steps === 0 ? "into-itself" : "leads-back", received: instead };
    const found = await trails.history(at);
    if (!found) return { field, rule: "entry-not-here", received: at };
    at = found.history.replacedBy;
  }
  return null;
}
