import { useTranslations } from "next-intl";
import type { FoundAnomaly } from "#core/object-files/derived";
import type { KeptFile } from "#core/object-files/kept-file";
import { AnomalyItem, showWritten, wordFound } from "./anomaly-item.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";
import { useSaidWords } from "./said-words.ts";

type AnomaliesPartProps = {
  readonly kept: KeptFile;
  readonly found: readonly FoundAnomaly[];
  readonly mayChange: boolean;
  readonly newId: () => string;
};

/** What does not fit: what the program found, and what somebody wrote. */
export function AnomaliesPart({ kept, found, mayChange, newId }: AnomaliesPartProps) {
  const t = useTranslations("objectPages.finding");
  const objects = useTranslations("objects");
  const say = useSaidWords();
  const { anomalies, stances } = kept.content;
  const common = { kept, stances, mayChange, newId };
  return (
    <section aria-labelledby="anomalies">
      <h2 id="anomalies">{t("anomalies")}</h2>
      {found.length + anomalies.length === 0 && <p>{t("noAnomalies")}</p>}
      <ul className={styles.list}>
        {found.map((each) => (
          <li key={each.key}>
            <AnomalyItem
              {...common}
              anomaly={wordFound(each, say, (id) => objects(`explanation.${id}` as never))}
            />
          </li>
        ))}
        {anomalies.map((each) => (
          <li key={each.id}>
            <AnomalyItem {...common} anomaly={showWritten(each)} />
            {mayChange && (
              <RemoveItem kept={kept} list="anomalies" id={each.id} part="finding" about={each.says} />
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
