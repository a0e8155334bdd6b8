import { type FieldError, received } from "../field-error.ts";

/** Fields of a form as they were typed. */
export type Typed = Readonly<Record<string, string>>;

/** Control signs but the line break, and signs that make a text read in another order than it is written. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const UNSEEN = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g;

/** A text as it is kept: line breaks made one sign, unseen signs made spaces, no space around it. */
const tidyText = (text: string): string =>
  text.normalize("NFC").replace(/\r\n?/g, "\n").replace(UNSEEN, " ").trim();

/** The same on one line. */
export const tidyLine = (text: string): string => tidyText(text).replace(/\s+/g, " ");

/** A size with any of the signs people write between two sides, and with a comma for a decimal point. */
export const plainSize = (typed: string): string =>
  typed
    .replace(/[×*]|\bby\b/gi, " x ")
    .replace(/(\d),(\d)/g, "$1.$2")
    .replace(/\s*mm\s*/gi, " ");

type Lengths = { readonly shortest?: number; readonly longest: number };

/** Reads texts out of a form, and gathers everything that is wrong with them, field by field. */
export class TypedReader {
  readonly errors: FieldError[] = [];

  constructor(private readonly typed: Typed) {}

  line(field: string, lengths: Lengths): string {
    return this.measured(field, tidyLine(this.typed[field] ?? ""), lengths);
  }

  text(field: string, lengths: Lengths): string {
    return this.measured(field, tidyText(this.typed[field] ?? ""), lengths);
  }

  oneOf<T extends string>(field: string, allowed: readonly T[]): T | null {
    const value = (this.typed[field] ?? "").trim();
    const found = allowed.find((each) => each === value);
    if (found === undefined) this.refuse(field, "one-of", value, { allowed: allowed.join(", ") });
    return found ?? null;
  }

  refuse(field: string, rule: string, value: string, params?: FieldError["params"]): void {
    this.errors.push({ field, rule, received: received(value), ...(params ? { params } : {}) });
  }

  private measured(field: string, value: string, { shortest = 0, longest }: Lengths): string {
    const length = [...value].length;
    if (length < shortest) {
      if (length === 0) this.refuse(field, "required", value);
      else this.refuse(field, "text-shortest", value, { shortest, length });
    }
    if (length > longest) this.refuse(field, "text-longest", value, { longest, length });
    return value;
  }
}
