import type { FieldError } from "#core/field-error";
import type { CommandName } from "#core/object-files/commands";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import type { Typed } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { readForm } from "../read-form.ts";

export type ObjectForm = {
  readonly typed: Typed;
  /** A photograph or scan that came with it; null when none did. */
  readonly file: File | null;
};

/** Room for the words of a form: a document brings a transcription of up to 60,000 signs, of up to four bytes each. */
const wordsOf = (command: CommandName): number => (command === "document" ? 512 : 64) * 1024;

/** Words over the limit are given back to who typed them; more than so much is no slip, and is not held. */
const GIVEN_BACK = 2 * 1024 * 1024;

export type RefusedForm = { readonly error: FieldError; readonly typed: Typed };

/** Reads a form of an object file: its texts, those of one name joined by spaces, and the image that came with it. */
export async function readObjectForm(
  request: Request,
  command: CommandName,
): Promise<Result<ObjectForm, RefusedForm>> {
  const form = await readForm(request, IMAGE_LIMITS.bytes + wordsOf(command));
  if (!form.ok) return fail({ error: form.error, typed: {} });
  const typed: Record<string, string> = {};
  let file: File | null = null;
  for (const [name, value] of form.value.entries()) {
    if (typeof value !== "string") file = value.size > 0 || value.name !== "" ? value : file;
    else typed[name] = name in typed ? `${typed[name]} ${value}`.trim() : value;
  }
  const bytes = Object.values(typed).reduce((sum, text) => sum + Buffer.byteLength(text), 0);
  if (bytes <= wordsOf(command)) return ok({ typed, file });
  const params = { limitKb: wordsOf(command) / 1024 };
  const size = `${Math.ceil(bytes / 1024)} kB`;
  const error = { field: "request", rule: "object-form-bytes", received: size, params };
  return fail({ error, typed: bytes > GIVEN_BACK ? {} : typed });
}
