import { useTranslations } from "next-intl";
import type { FoundAnomaly } from "#core/object-files/derived";
import type { KeptFile } from "#core/object-files/kept-file";
import type { WrittenAnomaly } from "#core/object-files/object-file";
import { AnomalyForm, typedAnomaly } from "./anomaly-form.tsx";
import { AnomalyItem, showWritten, wordFound } from "./anomaly-item.tsx";
import { type RefusedItem, stateOf } from "./item-form.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";
import { useSaidWords } from "./said-words.ts";

type AnomaliesPartProps = {
  readonly kept: KeptFile;
  readonly found: readonly FoundAnomaly[];
  readonly mayChange: boolean;
  readonly newId: () => string;
  readonly refused: RefusedItem;
};

/** What does not fit: what the program found, and what somebody wrote. */
export function AnomaliesPart({ kept, found, mayChange, newId, refused }: AnomaliesPartProps) {
  const t = useTranslations("objectPages.finding");
  const objects = useTranslations("objects");
  const say = useSaidWords();
  const { anomalies, stances } = kept.content;
  const common = { kept, stances, mayChange, newId, refused };
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
              <>
                <ChangeAnomaly kept={kept} anomaly={each} newId={newId} refused={refused} />
                <RemoveItem kept={kept} list="anomalies" id={each.id} part="finding" about={each.says} />
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

type ChangeAnomalyProps = Pick<AnomaliesPartProps, "kept" | "newId" | "refused"> & {
  readonly anomaly: WrittenAnomaly;
};

function ChangeAnomaly({ kept, anomaly, newId, refused }: ChangeAnomalyProps) {
  const t = useTranslations("objectPages");
  const state = stateOf(refused, "anomaly", anomaly.id, typedAnomaly(anomaly));
  return (
    <More words={t("finding.changeAnomaly")} isOpen={state.given}>
      <AnomalyForm kept={kept} state={state} isThere newId={newId} />
    </More>
  );
}
