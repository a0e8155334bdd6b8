import { parsePeriod } from "../dates/parse.ts";
import { isSlug } from "../entries/slug.ts";
import { type FieldError, received } from "../field-error.ts";

/** One record as it came: columns to text, whatever file it stood in. */
export type Columns = Readonly<Record<string, string>>;

/** Reads the columns of one record and gathers everything that is wrong with it, column by column. */
export class ColumnReader {
  readonly errors: FieldError[] = [];

  constructor(
    private readonly columns: Columns,
    allowed: readonly string[],
  ) {
    for (const name of Object.keys(columns))
      if (!allowed.includes(name)) this.refuse(name, "column-unknown", name, { allowed: allowed.join(", ") });
  }

  text(name: string): string {
    return (this.columns[name] ?? "").trim();
  }

  required(name: string): string {
    const value = this.text(name);
    if (value === "") this.refuse(name, "required", value);
    return value;
  }

  /** Parts separated by `;`, empty ones left out. */
  list(name: string): readonly string[] {
    return this.text(name)
      .split(";")
      .map((part) => part.trim())
      .filter((part) => part !== "");
  }

  oneOf<T extends string>(name: string, allowed: readonly T[]): T | null {
    const value = this.text(name);
    if (value === "") return null;
    const found = allowed.find((a) => a === value);
    if (found === undefined) this.refuse(name, "one-of", value, { allowed: allowed.join(", ") });
    return found ?? null;
  }

  /** A name for an address: lower-case letters, digits and hyphens. */
  slug(name: string): string {
    const value = this.required(name);
    if (value !== "" && !isSlug(value)) this.refuse(name, "slug", value);
    return value;
  }

  slugs(name: string): readonly string[] {
    const values = this.list(name);
    for (const value of values) if (!isSlug(value)) this.refuse(name, "slug", value);
    return values;
  }

  number(name: string, above: number): number | null {
    const value = this.text(name);
    if (value === "") return null;
    const number = Number(value);
    if (Number.isFinite(number) && number > above) return number;
    this.refuse(name, "number-above", value, { above });
    return null;
  }

  wholeNumber(name: string, from: number, to: number): number | null {
    const value = this.text(name);
    if (value === "") return null;
    const number = Number(value);
    if (Number.isInteger(number) && number >= from && number <= to) return number;
    this.refuse(name, "whole-number", value, { from, to });
    return null;
  }

  /** `count` numbers separated by `,` or ` x `. */
  numbers(name: string, count: number, separator: RegExp): readonly number[] | null {
    const value = this.text(name);
    if (value === "") return null;
    const numbers = value.split(separator).map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
    if (numbers.length === count && numbers.every(Number.isFinite)) return numbers;
    this.refuse(name, "numbers", value, { count });
    return null;
  }

  /** EDTF text of a date or interval, checked. */
  edtf(name: string): string | null {
    const value = this.text(name);
    if (value === "") return null;
    const parsed = parsePeriod(value, name);
    if (parsed.ok) return parsed.value.edtf;
    this.errors.push(parsed.error);
    return null;
  }

  refuse(field: string, rule: string, value: string, params?: Record<string, string | number>): void {
    this.errors.push({ field, rule, received: received(value), ...(params ? { params } : {}) });
  }
}
