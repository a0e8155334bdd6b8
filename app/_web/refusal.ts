import type { FieldError } from "#core/field-error";
import { KNOWLEDGE_FIELDS, type TypedKnowledge } from "#core/look-ups/knowledge";

type SearchParams = Readonly<Record<string, string | string[] | undefined>>;
export type Refusal = { readonly error: FieldError; readonly typed: TypedKnowledge };

/** What an address says of a plain form that was refused, and what had been typed; null when it says nothing. */
export function readRefusal(params: SearchParams): Refusal | null {
  const first = (name: string) => {
    const value = params[name];
    return Array.isArray(value) ? value[0] : value;
  };
  const rule = first("rule");
  if (rule === undefined) return null;
  const named = Object.keys(params).flatMap((name) => {
    const value = name.startsWith("param-") ? first(name) : undefined;
    return value === undefined ? [] : [[name.slice("param-".length), value] as const];
  });
  const typed = KNOWLEDGE_FIELDS.map((name) => [name, first(`typed-${name}`) ?? ""]);
  return {
    error: {
      field: first("field") ?? "photograph",
      rule,
      received: first("received") ?? "",
      params: Object.fromEntries(named),
    },
    typed: Object.fromEntries(typed) as TypedKnowledge,
  };
}
