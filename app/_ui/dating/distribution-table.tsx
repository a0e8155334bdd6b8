import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import { byDecades } from "#core/dating/years-shown";
import styles from "./dating.module.css";
import { wordYears } from "./year-words.ts";

type Years = { readonly from: number; readonly to: number };

/** The distribution in numbers: how likely each span of years is. */
export function DistributionTable({
  estimate,
  shown,
}: {
  readonly estimate: Estimate;
  readonly shown: Years;
}) {
  const t = useTranslations("dating");
  const period = useTranslations("period");
  const format = useFormatter();
  return (
    <details className={styles.numbers}>
      <summary>{t("inNumbers")}</summary>
      <table>
        <caption>{t("inNumbersCaption")}</caption>
        <thead>
          <tr>
            <th scope="col">{t("years")}</th>
            <th scope="col">{t("inHundred")}</th>
          </tr>
        </thead>
        <tbody>
          {byDecades(estimate, shown).map(({ from, to, mass }) => (
            <tr key={from}>
              <th scope="row">{wordYears(from, to, period)}</th>
              <td>{format.number(100 * mass, { minimumFractionDigits: 1, maximumFractionDigits: 1 })}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
