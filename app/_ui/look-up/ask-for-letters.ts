import type { FieldError } from "#core/field-error";
import type { LettersProposal } from "#core/reading/propose-letters";

type Answer = { readonly proposals: readonly LettersProposal[] } | { readonly error: FieldError };

/**
 * Asks the host what can be read in a photograph's region.
 * @param form what a look-up would send: photograph or again, and the region
 * @returns the proposals, or what was wrong; rule `unreachable` when no answer came
 */
export async function askForLetters(form: FormData, signal: AbortSignal): Promise<Answer> {
  try {
    const answer = await fetch("/api/letters", { method: "POST", body: form, signal });
    return (await answer.json()) as Answer;
  } catch {
    return { error: { field: "photograph", rule: "unreachable", received: "" } };
  }
}
