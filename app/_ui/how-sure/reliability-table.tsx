import { useFormatter, useTranslations } from "next-intl";
import type { ReliabilityBin } from "#core/similarity/calibration";
import styles from "./how-sure.module.css";

/** The diagram in numbers. */
export function ReliabilityTable({ bins }: { readonly bins: readonly ReliabilityBin[] }) {
  const t = useTranslations("howSure");
  const format = useFormatter();
  const percent = (value: number | null) =>
    value === null ? t("none") : format.number(value, { style: "percent", maximumFractionDigits: 1 });
  const edge = (bin: number) => format.number((100 * bin) / bins.length, { maximumFractionDigits: 0 });
  return (
    <table className={styles.table}>
      <caption>{t("tableCaption")}</caption>
      <thead>
        <tr>
          <th scope="col">{t("said")}</th>
          <th scope="col">{t("onAverage")}</th>
          <th scope="col">{t("right")}</th>
          <th scope="col">{t("answers")}</th>
        </tr>
      </thead>
      <tbody>
        {bins.map(({ count, probability, right }, i) => (
          <tr key={edge(i)}>
            <th scope="row">{t("from", { from: edge(i), to: edge(i + 1) })}</th>
            <td>{percent(probability)}</td>
            <td>{percent(right)}</td>
            <td>{format.number(count)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
