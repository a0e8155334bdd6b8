import type { FieldError } from "#core/field-error";
import type { Typed } from "#core/questions/typed-text";
import type { Result } from "#core/result";
import type { EntryHistory } from "#core/review/entry-history";
import type { Live } from "./live.ts";
import type { Paths } from "./paths-in-form.ts";
import { done, isToken, refuse } from "./words-form.ts";

export type Outcome = Result<EntryHistory, FieldError | readonly FieldError[]>;

/** Answers whoever sent a form of review. */
export function answer(request: Request, outcome: Outcome, typed: Typed, paths: Paths): Response {
  if (!outcome.ok) return refuse(request, [outcome.error].flat(), typed, paths.refused);
  const { state, shown } = outcome.value;
  return done(request, { state, shown }, paths.done);
}

/** An id that the form came with, so that sending it twice does it once; made when there is none. */
export function tokenIn(typed: Typed, field: string, { randomness }: Pick<Live, "randomness">): string {
  const given = typed[field] ?? "";
  return isToken(given) ? given : randomness.token();
}
