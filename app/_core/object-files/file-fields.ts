import { readDate } from "../dates/read-date.ts";
import { type Typed, TypedReader } from "../questions/typed-text.ts";

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const SHA256 = /^[0-9a-f]{64}$/;

/** Reads what the forms of a file have besides texts: ids, dates, numbers; gathers everything that is wrong. */
export class FileFields extends TypedReader {
  constructor(
    private readonly fields: Typed,
    /** The day of the change, so that what is still to come can be refused. */
    private readonly today: string,
  ) {
    super(fields);
  }

  raw(field: string): string {
    return (this.fields[field] ?? "").trim();
  }

  has(field: string): boolean {
    return this.raw(field) !== "";
  }

  id(field = "id"): string {
    const value = this.raw(field);
    if (!UUID.test(value)) this.refuse(field, "item-id", value);
    return value.toLowerCase();
  }

  optionalId(field: string): string | null {
    return this.has(field) ? this.id(field) : null;
  }

  ids(field: string): readonly string[] {
    const values = this.raw(field)
      .split(/[\s,]+/)
      .filter((each) => each !== "");
    const wrong = values.find((each) => !UUID.test(each));
    if (wrong !== undefined) this.refuse(field, "item-id", wrong);
    return [...new Set(values.map((each) => each.toLowerCase()))];
  }

  sha256(field: string): string {
    const value = this.raw(field).toLowerCase();
    if (!SHA256.test(value)) this.refuse(field, "sha256", value);
    return value;
  }

  number(field: string, from: number, to: number): number {
    const value = Number(this.raw(field).replace(",", "."));
    if (this.has(field) && value >= from && value <= to) return value;
    this.refuse(field, "number-between", this.raw(field), { from, to });
    return from;
  }

  optionalNumber(field: string, from: number, to: number): number | null {
    return this.has(field) ? this.number(field, from, to) : null;
  }

  /** One of several, or the first of them when nothing was said. */
  choice<T extends string>(field: string, allowed: readonly [T, ...T[]]): T {
    return this.has(field) ? (this.oneOf(field, allowed) ?? allowed[0]) : allowed[0];
  }

  /** A date or period as people write it, kept in EDTF; null when none was given. */
  date(field: string): string | null {
    if (!this.has(field)) return null;
    const read = readDate(this.raw(field), field);
    if (!read.ok) {
      this.errors.push(read.error);
      return null;
    }
    const { firstDay, edtf } = read.value.interval;
    if (firstDay !== null && firstDay.length === 10 && firstDay > this.today)
      this.refuse(field, "date-to-come", this.raw(field), { today: this.today });
    return edtf;
  }
}
