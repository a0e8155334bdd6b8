import type { useTranslations } from "next-intl";

type PeriodMessages = ReturnType<typeof useTranslations<"period">>;

/** A year as one says it, BCE where it is. */
function wordYear(year: number, t: PeriodMessages): string {
  return year > 0 ? t("year", { year: String(year) }) : t("bce", { year: String(1 - year) });
}

/** Years from one to another, both counted in; a single year as itself. */
export function wordYears(from: number, to: number, t: PeriodMessages): string {
  if (from === to) return wordYear(from, t);
  return t("fromTo", { from: wordYear(from, t), to: wordYear(to, t) });
}
