import type { FieldError } from "#core/field-error";

/** A rule refuses what is being recorded: thrown inside a transaction, so that nothing of it stays. */
export class Refused extends Error {
  constructor(readonly refusal: FieldError & { readonly entry: string }) {
    super(`${refusal.entry}: ${refusal.field} ${refusal.rule}`);
    this.name = "Refused";
  }
}
