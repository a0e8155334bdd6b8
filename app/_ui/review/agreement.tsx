import { useFormatter, useTranslations } from "next-intl";
import type { FieldAgreement } from "#core/review/agreement/field-agreement";
import plain from "../plain.module.css";
import styles from "./agreement.module.css";

/** How far the reviewers of each field agree, with what the figures can and can't say. */
export function Agreement({ fields }: { readonly fields: readonly FieldAgreement[] }) {
  const t = useTranslations("moderation");
  const names = useTranslations("entryFields");
  const format = useFormatter();
  const figure = (value: number | null) =>
    value === null
      ? t("undefined")
      : format.number(value, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  return (
    <section aria-labelledby="agreement" className={styles.agreement}>
      <h2 id="agreement">{t("agreement")}</h2>
      {fields.length === 0 ? (
        <p>{t("noAgreement")}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
        <section className={styles.scrolls} tabIndex={0} aria-labelledby="agreement">
          <table className={styles.table}>
            <thead>
              <tr>
                {(["field", "reviews", "opinions", "alpha", "kappa"] as const).map((column) => (
                  <th key={column} scope="col">
                    {t(`columns.${column}`)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {fields.map(({ field, reviews, opinions, alpha, kappa }) => (
                <tr key={field}>
                  <th scope="row">{names(field)}</th>
                  <td>{reviews}</td>
                  <td>{opinions}</td>
                  <td>{figure(alpha)}</td>
                  <td>{t("kappaOf", { value: figure(kappa.value), reviews: kappa.reviews })}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <p className={plain.note}>{t("caveats")}</p>
    </section>
  );
}
