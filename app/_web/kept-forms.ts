import { randomBytes } from "node:crypto";
import type { FieldError } from "#core/field-error";
import type { Typed } from "#core/questions/typed-text";

/** A form that was refused, or that is to be looked over once more, with what was typed into it. */
export type KeptForm = {
  readonly errors: readonly FieldError[];
  readonly typed: Typed;
};

const LONGEST_MS = 30 * 60 * 1000;
const MOST = 500;

// On the global object, since a bundler may give each route its own copy of this module.
const held = globalThis as typeof globalThis & {
  countermarkForms?: Map<string, { readonly form: KeptForm; readonly until: number }>;
};
held.countermarkForms ??= new Map();
const forms = held.countermarkForms;

/**
 * Keeps a form for the page that shows it again. What was typed can be longer than an address may be, so the address
 * carries an unguessable name instead; half an hour later, or when the host starts anew, it is forgotten.
 * @returns its name
 */
export function keepForm(form: KeptForm): string {
  const now = Date.now();
  for (const [name, { until }] of forms) if (until < now || forms.size >= MOST) forms.delete(name);
  const name = randomBytes(16).toString("base64url");
  forms.set(name, { form, until: now + LONGEST_MS });
  return name;
}

/** A kept form by its name; null when it is forgotten or never was. */
export function keptForm(name: string | string[] | undefined): KeptForm | null {
  const found = typeof name === "string" ? forms.get(name) : undefined;
  return found && found.until >= Date.now() ? found.form : null;
}
