import { createTranslator } from "use-intl/core";
import type { FieldError } from "#core/field-error";
import messages from "../messages/en.json" with { type: "json" };

const rules: Readonly<Record<string, string>> = { ...messages.rules, ...messages.importRules };

/** An error in words, from the interface's own messages: the field, the rule and what was received. */
export function sentence({ field, rule, received, params }: FieldError): string {
  const words = rules[rule] ?? messages.rules.unknown;
  const t = createTranslator<Record<string, string>>({ locale: "en-GB", messages: { words } });
  return t("words", { field, rule, received, event: received, ...params });
}
