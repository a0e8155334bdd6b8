import { tidyTyped } from "#core/drafts/tidy-typed";
import type { FieldError } from "#core/field-error";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import type { Typed } from "#core/questions/typed-text";
import { ok, type Result } from "#core/result";
import { readForm } from "../read-form.ts";

export type DraftForm = {
  /** The version that it was made from. */
  readonly version: number;
  readonly typed: Typed;
  /** What it began from, to tell what was changed in it. */
  readonly base: Typed;
  /** What is to be done once it is saved. */
  readonly act: string;
  readonly files: readonly File[];
};

/** Reads the form of a draft: its texts, and what files were chosen with it. */
export async function readDraftForm(request: Request): Promise<Result<DraftForm, FieldError>> {
  const form = await readForm(request, IMAGE_LIMITS.bytesTogether, "images-together");
  if (!form.ok) return form;
  const all = [...form.value.entries()];
  const texts = Object.fromEntries(
    all.flatMap(([name, value]) => (typeof value === "string" ? [[name, value] as const] : [])),
  );
  const files = all.flatMap(([name, value]) =>
    name === "photograph" && value instanceof File && (value.size > 0 || value.name !== "") ? [value] : [],
  );
  return ok({
    version: Number(texts.version),
    typed: tidyTyped(texts),
    base: typedIn(texts.base),
    act: texts.act ?? "save",
    files,
  });
}

/** Typed fields that a form carries as JSON; nothing when it is none. */
export function typedIn(json: string | undefined): Typed {
  try {
    const value: unknown = JSON.parse(json ?? "{}");
    if (value === null || typeof value !== "object") return {};
    const texts = Object.entries(value).flatMap(([name, text]) =>
      typeof text === "string" ? [[name, text] as const] : [],
    );
    return tidyTyped(Object.fromEntries(texts));
  } catch {
    return {};
  }
}
