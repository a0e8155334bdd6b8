import { useTranslations } from "next-intl";
import type { DatedStatement } from "#core/dating/evidence";
import styles from "./answer.module.css";

/** Where a statement stands, on what basis, how often such a one is right, and what limits it. */
export function StatementFacts({ statement }: { readonly statement: DatedStatement }) {
  const t = useTranslations("decoders");
  const { source, basis, reliability, exceptions } = statement;
  return (
    <dl className={styles.facts}>
      <div className={styles.fact}>
        <dt>{t("source")}</dt>
        <dd>{source}</dd>
      </div>
      <div className={styles.fact}>
        <dt>{t("basis")}</dt>
        <dd>
          {t(`bases.${basis}`)} {t("reliability", { times: Math.round(reliability * 100) })}
        </dd>
      </div>
      {exceptions !== "" && (
        <div className={styles.fact}>
          <dt>{t("exceptions")}</dt>
          <dd>{exceptions}</dd>
        </div>
      )}
    </dl>
  );
}
