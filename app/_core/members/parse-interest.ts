import { isSlug } from "../entries/slug.ts";
import type { FieldError } from "../field-error.ts";
import { type Typed, TypedReader } from "../questions/typed-text.ts";
import { fail, ok, type Result } from "../result.ts";
import { type Interest, STAKES } from "./member.ts";

export const INTEREST_FIELDS = ["maker", "stake", "note"] as const;

/** Reads the declaration of an interest: in the maker that was chosen, or in an entry. */
export function parseInterest(typed: Typed): Result<Interest, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const kind = (typed.entry ?? "") === "" ? "maker" : "entry";
  const slug = (typed[kind] ?? "").trim();
  if (slug === "") read.refuse(kind, "required", slug);
  else if (!isSlug(slug)) read.refuse(kind, `${kind}-chosen`, slug);
  const stake = read.oneOf("stake", STAKES);
  const note = read.line("note", { longest: 300 });
  if (read.errors.length > 0 || stake === null) return fail(read.errors);
  return ok({ in: { kind, slug }, stake, note });
}
