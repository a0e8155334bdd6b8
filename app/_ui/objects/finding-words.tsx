import { useTranslations } from "next-intl";
import type { Caution } from "#core/object-files/finding";
import type { Finding } from "#core/object-files/object-file";
import { wordEdtf } from "../word-edtf.ts";
import styles from "./objects.module.css";
import { useSaidWords } from "./said-words.ts";

type FindingWordsProps = { readonly finding: Finding; readonly cautions: readonly Caution[] };

/** A finding in the trade's careful words, with what stays open, and what a reader has to know beside it. */
export function FindingWords({ finding, cautions }: FindingWordsProps) {
  const say = useSaidWords();
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
      {cautions.length > 0 && (
        <ul className={`${styles.against} ${styles.cautions}`} aria-label={t("finding.cautions")}>
          {cautions.map((each) => (
            <li key={each.is}>{say("caution", each)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
