import { useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import { PeriodWords } from "../period-words.tsx";
import { CitationWords } from "./citation-words.tsx";
import { PeriodDrawn } from "./computed-period.tsx";
import styles from "./entry.module.css";
import { Facts } from "./facts.tsx";

/** Why: the period of use on the page's axis, the reason for each of its ends, and the sources. */
export function EntryWhy({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const { content, summary } = view;
  return (
    <section aria-labelledby="why">
      <h2 id="why">{t("why")}</h2>
      <p>
        {t("used")}{" "}
        <strong className={styles.period}>
          <PeriodWords period={summary.period} />
        </strong>
        {content.period && <span className={styles.edtf}> {t("edtf", { edtf: content.period })}</span>}
      </p>
      <PeriodDrawn stated={summary.period} citations={content.citations} />
      <Facts
        facts={[
          [t("fromReason"), content.periodFromReason],
          [t("toReason"), content.periodToReason],
        ]}
      />
      {content.citations.length > 0 && (
        <>
          <h3 className={styles.sub}>{t("citations")}</h3>
          <ul className={styles.sources}>
            {content.citations.map((citation, i) => (
              <li key={i}>
                <CitationWords citation={citation} />
              </li>
            ))}
          </ul>
        </>
      )}
      {content.sources.length > 0 && (
        <>
          <h3 className={styles.sub}>{t(content.citations.length > 0 ? "sourcesInWords" : "sources")}</h3>
          <ul className={styles.sources}>
            {content.sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </>
      )}
      {content.sources.length + content.citations.length === 0 && (
        <>
          <h3 className={styles.sub}>{t("sources")}</h3>
          <p>{t("noSources")}</p>
        </>
      )}
    </section>
  );
}
