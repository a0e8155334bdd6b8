import type { PhotographRow } from "./demo.ts";

/** What a photograph says of the impression itself, without light and scale. */
const impressionIn = ({ entry, shows }: PhotographRow): string => {
  const parts = shows.replace(/\.$/, "").split("; ");
  return [entry, ...parts.filter((part) => !/^(raking light|scale)/.test(part))].join("; ");
};

/** Numbers the impressions of each entry: photographs that differ by light and scale alone show one. */
export function numberImpressions(rows: readonly PhotographRow[]): PhotographRow[] {
  const numbers = new Map<string, Map<string, number>>();
  return rows.map((row) => {
    const known = numbers.get(row.entry) ?? new Map<string, number>();
    numbers.set(row.entry, known);
    const shown = impressionIn(row);
    const number = known.get(shown) ?? known.size + 1;
    known.set(shown, number);
    return { ...row, impression: String(number) };
  });
}
