import { createTranslator } from "use-intl/core";
import type { FieldError } from "#core/field-error";
import messages from "../messages/en.json" with { type: "json" };

const rules: Readonly<Record<string, string>> = messages.rules;

/** An error in words, from the interface's own messages: the field, the rule and what was received. */
export function sentence({ field, rule, received, params }: FieldError): string {
  if (rules[rule] === undefined) return `${field}: ${rule}. Received ${received}.`;
  const t = createTranslator<Record<string, string>>({ locale: "en", messages: { [rule]: rules[rule] } });
  return t(rule, { field, received, ...params });
}
