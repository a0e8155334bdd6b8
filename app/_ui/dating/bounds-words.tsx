import { useTranslations } from "next-intl";
import { parseInterval } from "#core/dates/parse";
import { boundDate } from "#core/dating/bound-date";
import type { HardBounds } from "#core/dating/bounds";
import { wordPeriod } from "../period-words.tsx";

/** "not before 1914, not after August 1922". */
export function BoundsWords({ bounds: { notBefore, notAfter } }: { readonly bounds: HardBounds }) {
  const t = useTranslations("dating");
  const period = useTranslations("period");
  const words = (day: string, end: "first" | "last") => {
    const read = parseInterval(boundDate(day, end));
    return read.ok ? wordPeriod(read.value, period) : day;
  };
  if (!notBefore && !notAfter) return t("noBounds");
  return (
    <>
      {notBefore && <span>{t("notBefore", { day: words(notBefore.day, "first") })}</span>}
      {notBefore && notAfter && <br />}
      {notAfter && <span>{t("notAfter", { day: words(notAfter.day, "last") })}</span>}
    </>
  );
}
