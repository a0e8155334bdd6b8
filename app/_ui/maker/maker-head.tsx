import { useFormatter, useTranslations } from "next-intl";
import type { MakerView } from "#core/entries/maker";
import { PeriodWords } from "../period-words.tsx";
import styles from "./maker.module.css";

/** Who it was, where, in what trades, and when. */
export function MakerHead({ view }: { readonly view: MakerView }) {
  const t = useTranslations("makers");
  const format = useFormatter();
  const { summary } = view;
  return (
    <header className={styles.head}>
      <p className={styles.kind}>
        {t(`kinds.${summary.kind}`)}
        {summary.place && `, ${summary.place}`}
      </p>
      <h1>{summary.name}</h1>
      <p className={styles.facts}>
        {t("activeIs")} <PeriodWords period={summary.active} />
        {summary.trades.length > 0 && `; ${format.list(summary.trades, { type: "unit" })}`}
      </p>
      {view.note && <p className={styles.text}>{view.note}</p>}
      {view.sources.length > 0 && (
        <div>
          <h2 className={styles.small}>{t("sources")}</h2>
          <ul>
            {view.sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </div>
      )}
    </header>
  );
}
