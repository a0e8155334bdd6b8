import type { FieldError } from "#core/field-error";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import type { Typed } from "#core/questions/typed-text";
import { ok, type Result } from "#core/result";
import { readForm } from "../read-form.ts";

export type ObjectForm = {
  readonly typed: Typed;
  /** A photograph or scan that came with it; null when none did. */
  readonly file: File | null;
};

/** A transcription of a long letter, and what goes with it. */
const TEXTS = 256 * 1024;

/** Reads a form of an object file: its texts, those of one name joined by spaces, and the image that came with it. */
export async function readObjectForm(request: Request): Promise<Result<ObjectForm, FieldError>> {
  const form = await readForm(request, IMAGE_LIMITS.bytes + TEXTS);
  if (!form.ok) return form;
  const typed: Record<string, string> = {};
  let file: File | null = null;
  for (const [name, value] of form.value.entries()) {
    if (typeof value !== "string") file = value.size > 0 || value.name !== "" ? value : file;
    else typed[name] = name in typed ? `${typed[name]} ${value}`.trim() : value;
  }
  return ok({ typed, file });
}
