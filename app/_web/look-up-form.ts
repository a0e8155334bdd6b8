import type { FieldError } from "#core/field-error";
import {
  KNOWLEDGE_FIELDS,
  type Knowledge,
  parseKnowledge,
  type TypedKnowledge,
} from "#core/look-ups/knowledge";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import { ok, type Result } from "#core/result";
import type { PhotographToLookUp } from "#usecases/look-up/read-photographs";
import type { Live } from "./live.ts";
import { readLookUpPhotographs } from "./look-up-photographs.ts";
import { readForm } from "./read-form.ts";

export type LookUpForm = {
  readonly photographs: readonly PhotographToLookUp[];
  readonly known: Knowledge;
};

/** Where a plain form came from and what was typed into it, so that a refusal can lead back to it. */
export type Sender = { readonly lookUp: string | null; readonly typed: TypedKnowledge };

/** Reads the form of a look-up: the photographs, each with its region and its mark, and what is known besides. */
export async function readLookUpForm(
  request: Request,
  live: Live,
  ownerHash: string,
): Promise<{ readonly form: Result<LookUpForm, FieldError>; readonly sender: Sender | null }> {
  const form = await readForm(request, IMAGE_LIMITS.bytesTogether, "images-together");
  if (!form.ok) return { form, sender: null };
  const typed = Object.fromEntries(
    KNOWLEDGE_FIELDS.map((name) => [name, textOf(form.value, name)]),
  ) as TypedKnowledge;
  const from = textOf(form.value, "from");
  const sender = { lookUp: /^[\w-]{1,64}$/.test(from) ? from : null, typed };
  return { form: await readParts(form.value, typed, live, ownerHash), sender };
}

async function readParts(
  form: FormData,
  typed: TypedKnowledge,
  live: Live,
  ownerHash: string,
): Promise<Result<LookUpForm, FieldError>> {
  const known = parseKnowledge(typed);
  if (!known.ok) return known;
  const photographs = await readLookUpPhotographs(form, live, ownerHash);
  return photographs.ok ? ok({ photographs: photographs.value, known: known.value }) : photographs;
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}
