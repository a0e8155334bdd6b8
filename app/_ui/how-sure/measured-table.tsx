import { useFormatter, useTranslations } from "next-intl";
import type { Measured } from "#core/similarity/calibration";
import styles from "./how-sure.module.css";

/** How far what was said lay from what was so, on each set of photographs that was tried. */
export function MeasuredTable({ rows }: { readonly rows: readonly Measured[] }) {
  const t = useTranslations("howSure");
  const format = useFormatter();
  const error = (value: number) =>
    format.number(value, { minimumFractionDigits: 3, maximumFractionDigits: 3 });
  return (
    <table className={styles.table}>
      <caption>{t("figuresCaption")}</caption>
      <thead>
        <tr>
          <th scope="col">{t("on")}</th>
          <th scope="col">{t("present")}</th>
          <th scope="col">{t("absent")}</th>
          <th scope="col">{t("before")}</th>
          <th scope="col">{t("after")}</th>
          <th scope="col">{t("afterNone")}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.on}>
            <th scope="row">{row.on}</th>
            <td>{format.number(row.present)}</td>
            <td>{format.number(row.absent)}</td>
            <td>{error(row.eceBefore)}</td>
            <td>{error(row.ece)}</td>
            <td>{error(row.eceNone)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
