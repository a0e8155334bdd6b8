import { useTranslations } from "next-intl";
import { type DateWords, describeInterval } from "#core/dates/describe-interval";
import type { Interval } from "#core/dates/interval";

type Words = ReturnType<typeof useTranslations<"period">>;

/** A period as one says it: "1871 to about 1890", "from 1902", "until 1920", "the 1920s". */
export function PeriodWords({ period }: { readonly period: Interval | null }) {
  const t = useTranslations("period");
  return period === null ? t("unknown") : wordPeriod(period, t);
}

/** The words for a period, for attributes and sentences; `t` is bound to the messages under "period". */
export function wordPeriod(period: Interval, t: Words): string {
  return say(describeInterval(period), t);
}

function say({ key, params = {} }: DateWords, t: Words): string {
  const said = Object.entries(params).map(([name, value]) => [
    name,
    typeof value === "object" ? say(value, t) : value,
  ]);
  return t(key, Object.fromEntries(said));
}
