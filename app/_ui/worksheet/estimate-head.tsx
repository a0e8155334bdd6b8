import { useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import { wordYear } from "./piece-words.ts";
import { wordRanges } from "./range-words.ts";
import styles from "./worksheet.module.css";

/** When it was probably made, before anything else; said again whenever it changes. */
export function EstimateHead({ estimate }: { readonly estimate: Estimate }) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const years = (share: 50 | 80 | 95) => wordRanges(estimate.shortest[share].ranges, t, period);
  return (
    <div className={styles.answer} role="status">
      <p className={styles.probably}>
        {t.rich("probably", { years: years(95), strong: (chunks) => <strong>{chunks}</strong> })}
      </p>
      <p className={styles.narrower}>
        {t("narrower", { eighty: years(80), fifty: years(50) })}{" "}
        {estimate.median === null
          ? t("medianNone")
          : t("median", { year: wordYear(Math.floor(estimate.median), period) })}
      </p>
    </div>
  );
}
