import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import { wordYears } from "../dating/year-words.ts";
import styles from "./worksheet.module.css";

/** When it was probably made, before anything else; said again whenever it changes. */
export function EstimateHead({ estimate }: { readonly estimate: Estimate }) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const format = useFormatter();
  const years = (share: 50 | 80 | 95) =>
    format.list(
      estimate.shortest[share].ranges.map(({ from, to }) => wordYears(from, to, period)),
      { type: "disjunction" },
    );
  const middle = estimate.median === null ? null : Math.floor(estimate.median);
  return (
    <div className={styles.answer} role="status">
      <p className={styles.probably}>
        {t.rich("probably", { years: years(95), strong: (chunks) => <strong>{chunks}</strong> })}
      </p>
      <p className={styles.narrower}>
        {t("narrower", { eighty: years(80), fifty: years(50) })}{" "}
        {middle === null ? t("medianNone") : t("median", { year: wordYears(middle, middle, period) })}
      </p>
    </div>
  );
}
