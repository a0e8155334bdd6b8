import { useTranslations } from "next-intl";
import type { Bound, Interval } from "#core/dates/interval";

type Words = ReturnType<typeof useTranslations<"period">>;

/** A period as one says it: "1871 to about 1890", "from 1902", "until 1920", "the 1920s". */
export function PeriodWords({ period }: { readonly period: Interval | null }) {
  const t = useTranslations("period");
  return period === null ? t("unknown") : wordPeriod(period, t);
}

/** The words for a period, for attributes and sentences; `t` is bound to the messages under "period". */
export function wordPeriod(period: Interval, t: Words): string {
  const [first = "", second] = period.edtf.split("/");
  if (second === undefined) return wordEnd(first, period.start, t) ?? t("unknown");
  const from = wordEnd(first, period.start, t);
  const to = wordEnd(second, period.end, t);
  if (from !== null && to !== null) return t("fromTo", { from, to });
  if (from !== null) return period.end.open ? t("from", { from }) : t("fromUnknown", { from });
  if (to !== null) return period.start.open ? t("until", { to }) : t("unknownUntil", { to });
  return t("unknown");
}

function wordEnd(edtf: string, bound: Bound, t: Words): string | null {
  if (bound.open || bound.year === null) return null;
  const year = wordYear(edtf, bound.year, t);
  if (bound.approximate && bound.uncertain) return t("perhapsAbout", { year });
  if (bound.approximate) return t("about", { year });
  return bound.uncertain ? t("perhaps", { year }) : year;
}

function wordYear(edtf: string, year: number, t: Words): string {
  if (/^-?\d{3}X/.test(edtf)) return t("decade", { year: String(Math.floor(year / 10) * 10) });
  if (/^-?\d{2}XX/.test(edtf)) return t("hundred", { year: String(Math.floor(year / 100) * 100) });
  return year > 0 ? String(year) : t("bce", { year: String(1 - year) });
}
