import reasons from "./tables/reasons.json" with { type: "json" };

type Shape = "reason" | "either" | "last" | "span";

/**
 * A table's own sentence with what was found put into it.
 * @param shape which of the table's sentences: the usual one, of two years, of the last year, of a span
 */
export function fillReason(table: string, shape: Shape, found: Readonly<Record<string, string>>): string {
  const sentences = reasons.find(({ id }) => id === table);
  return fillIn(sentences?.[shape] ?? "", found);
}

/** What limits every statement of a table. */
export function exceptionsOf(table: string): string {
  return reasons.find(({ id }) => id === table)?.exceptions ?? "";
}

/** Puts values in the place of `{name}`. */
export function fillIn(sentence: string, values: Readonly<Record<string, string>>): string {
  return sentence.replace(/\{(\w+)\}/g, (all, name: string) => values[name] ?? all);
}

/** `2717437` as `2,717,437`. */
export const groupDigits = (number: number): string => String(number).replace(/\B(?=(\d{3})+$)/g, ",");

const MONTHS = [
  ...["January", "February", "March", "April", "May", "June", "July"],
  ...["August", "September", "October", "November", "December"],
];

/** `1855-05-31` as `31 May 1855`, `1855-05` as `May 1855`. */
export function sayDay(iso: string): string {
  const [year = "", month, day] = iso.split("-");
  const name = month === undefined ? undefined : MONTHS[Number(month) - 1];
  return [day === undefined ? undefined : String(Number(day)), name, year]
    .filter((part) => part !== undefined)
    .join(" ");
}
