import type { Sourced } from "./sourced.ts";
import table from "./tables/registration-diamond.json" with { type: "json" };

export const DIAMOND_CORNERS = ["top", "right", "bottom", "left"] as const;
export type DiamondCorner = (typeof DIAMOND_CORNERS)[number];
export const DIAMOND_SERIES = ["1842-1867", "1868-1883"] as const;
export type DiamondSeries = (typeof DIAMOND_SERIES)[number];

/** What a corner can hold. */
export type DiamondPart = "year" | "month" | "day" | "parcel";

type DiamondRow = Sourced & {
  readonly kind: string;
  readonly key: string;
  readonly value: number | string;
  readonly series: string;
  readonly yearLetter?: string;
  readonly fromDay?: number;
  readonly toDay?: number;
};

const ROWS = table as readonly DiamondRow[];
const inSeries = (row: DiamondRow, series: DiamondSeries) => row.series === series || row.series === "both";

/** A letter or a class with what it stands for. */
export type Meaning = { readonly value: number | string; readonly row: DiamondRow };

/** What a letter, class or corner stands for in a series; undefined when the table has none of that name. */
export function lookUpDiamond(
  kind: "year letter" | "month letter" | "class" | "position",
  key: string,
  series: DiamondSeries,
): Meaning | undefined {
  const row = ROWS.find((each) => each.kind === kind && each.key === key && inSeries(each, series));
  return row && { value: row.value, row };
}

/** What may be written in a place, in the table's order. */
export function keysOf(
  kind: "year letter" | "month letter" | "class",
  series: DiamondSeries,
): readonly string[] {
  return ROWS.filter((row) => row.kind === kind && inSeries(row, series)).map(({ key }) => key);
}

/** A time in which a letter stood for another month, and perhaps another year, than it does by rule. */
export type Irregularity = {
  readonly year: number;
  readonly month: number;
  readonly fromDay: number;
  readonly toDay: number;
  readonly yearLetter: string;
  readonly monthLetter: string;
  readonly row: DiamondRow;
};

export function irregularitiesOf(series: DiamondSeries): readonly Irregularity[] {
  return ROWS.filter((row) => row.kind === "irregularity" && inSeries(row, series)).map((row) => {
    const [year = 0, month = 0] = row.key.split("-").map(Number);
    const { fromDay = 1, toDay = 31, yearLetter = "", value } = row;
    return { year, month, fromDay, toDay, yearLetter, monthLetter: String(value), row };
  });
}
