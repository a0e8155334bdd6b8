import { useTranslations } from "next-intl";
import type { Finding } from "#core/object-files/object-file";
import { wordEdtf } from "../word-edtf.ts";
import styles from "./objects.module.css";

/** A finding in the trade's careful words, with what stays open. */
export function FindingWords({ finding }: { readonly finding: Finding }) {
  const t = useTranslations("objectPages");
  const period = useTranslations("period");
  const { rung, maker, says, ownDate, size, doubts } = finding;
  return (
    <>
      <p className={styles.lead}>
        {t(`rungs.${rung}`)} {maker}
      </p>
      {says && <p className={styles.told}>{says}</p>}
      <dl className={styles.facts}>
        {ownDate && (
          <>
            <dt>{t("fields.ownDate")}</dt>
            <dd>
              {wordEdtf(ownDate.edtf, period)}. {ownDate.reasons}
            </dd>
          </>
        )}
        {size && (
          <>
            <dt>{t("fields.size")}</dt>
            <dd>{size}</dd>
          </>
        )}
        {doubts && (
          <>
            <dt>{t("fields.doubts")}</dt>
            <dd>{doubts}</dd>
          </>
        )}
      </dl>
    </>
  );
}
