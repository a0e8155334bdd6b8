import { type FieldError, received } from "#core/field-error";
import { KNOWLEDGE_FIELDS } from "#core/look-ups/knowledge";

type Params = Readonly<Record<string, string | string[] | undefined>>;

/** What a look-up can be refused for, and of which field; nothing else is said, whatever an address asks to be said. */
const RULES = [
  "image-empty",
  "image-type",
  "image-bytes",
  "image-pixels",
  "image-too-small",
  "image-damaged",
  "image-missing",
  "images-together",
  "photographs-most",
  "one-for-each",
  "whole-number",
  "region-numbers",
  "region-size",
  "region-inside",
  "number",
  "form",
  "busy",
  "try-unknown",
  "again-unknown",
  "unexpected",
  "preparing",
  "one-of",
  "letters-legible",
  "letters-length",
  "millimetres",
  "text-length",
];
const FIELDS = [
  "photograph",
  "try",
  "again",
  "mark",
  "region",
  "x",
  "y",
  "width",
  "height",
  "turn",
  "request",
  ...KNOWLEDGE_FIELDS,
];
const NUMBERS = [
  "limitMb",
  "limitMp",
  "smallest",
  "width",
  "height",
  "longest",
  "done",
  "of",
  "most",
  "photographs",
  "from",
  "to",
];

/** The refusal that an address tells of; null when it tells of none that the reference knows. */
export function refusalOf(params: Params): FieldError | null {
  const text = (name: string) => {
    const value = params[name];
    return (Array.isArray(value) ? value[0] : value) ?? "";
  };
  const [rule, field] = [text("rule"), text("field")];
  if (!RULES.includes(rule) || !FIELDS.includes(field)) return null;
  const numbers = NUMBERS.map((name) => [name, Number(text(`param-${name}`))] as const);
  return {
    rule,
    field,
    received: received(text("received")),
    params: Object.fromEntries(numbers.filter(([, value]) => value > 0)),
  };
}
