import type { FieldError } from "#core/field-error";
import { KNOWLEDGE_FIELDS, type TypedKnowledge } from "#core/look-ups/knowledge";

export const NOTHING_TYPED: TypedKnowledge = {
  letters: "",
  width_mm: "",
  height_mm: "",
  technique: "",
  material: "",
  kind: "",
};

/** Puts what was typed into the fields inside an element into a form that is about to be sent. */
export function addKnown(form: FormData, within: HTMLElement | null): void {
  for (const name of KNOWLEDGE_FIELDS) {
    const field = within?.querySelector<HTMLInputElement | HTMLSelectElement>(`[name="${name}"]`);
    if (field?.value) form.set(name, field.value);
  }
}

export function isAboutKnown(error: FieldError | null): boolean {
  return error !== null && KNOWLEDGE_FIELDS.some((name) => name === error.field);
}
