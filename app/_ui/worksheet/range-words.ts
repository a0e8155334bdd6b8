import type { Estimate } from "#core/dating/estimate";
import { type PeriodWordsOf, type SheetWords, wordYear } from "./piece-words.ts";

type Range = Estimate["shortest"][95]["ranges"][number];

/** "1905 to 1911", or "1871 to 1874 or 1905 to 1911"; a single year as itself. */
export function wordRanges(ranges: readonly Range[], t: SheetWords, period: PeriodWordsOf): string {
  return ranges
    .map(({ from, to }) => wordSpan(from, to, t, period))
    .reduce((first, second) => (first === "" ? second : t("madeRanges", { first, second })), "");
}

export function wordSpan(from: number, to: number, t: SheetWords, period: PeriodWordsOf): string {
  if (from === to) return wordYear(from, period);
  return t("madeRange", { from: wordYear(from, period), to: wordYear(to, period) });
}
