import { useFormatter, useTranslations } from "next-intl";
import { parseInterval } from "#core/dates/parse";
import type { EntryToMake } from "#core/questions/parse-entry";
import entry from "../entry/entry.module.css";
import { Facts } from "../entry/facts.tsx";
import { PeriodWords } from "../period-words.tsx";
import plain from "../plain.module.css";
import { axisOver } from "../time/axis.ts";
import { Ticks } from "../time/ticks.tsx";
import { Track } from "../time/track.tsx";
import styles from "./form.module.css";

type EntryUnderstoodProps = { readonly entry: EntryToMake; readonly maker: string | null };

/** How what was typed is understood, before it is recorded: the dates above all, in words and on the years. */
export function EntryUnderstood({ entry: made, maker }: EntryUnderstoodProps) {
  const t = useTranslations();
  const format = useFormatter();
  const { content, newMaker } = made;
  const parsed = content.period === null ? null : parseInterval(content.period);
  const period = parsed?.ok ? parsed.value : null;
  const axis = axisOver([period], 6);
  const size = content.sizeMm;
  const who = newMaker ? t("questionForm.newMakerNamed", { name: newMaker.name }) : maker;
  return (
    <section className={styles.understood} aria-labelledby="understood">
      <h2 id="understood">{t("questionForm.understood")}</h2>
      <p>
        {t("entry.used")}{" "}
        <strong>
          <PeriodWords period={period} />
        </strong>
      </p>
      {axis && (
        <div className={entry.axis}>
          <Ticks axis={axis} />
          <Track period={period} axis={axis} />
        </div>
      )}
      <Facts
        facts={[
          [t("fields.maker"), who ?? t("entry.makerUnknown")],
          [
            t("entry.size"),
            size &&
              t("entry.sizeMm", { width: format.number(size.width), height: format.number(size.height) }),
          ],
          [t("entry.sources"), content.sources.length > 0 && format.list(content.sources)],
        ]}
      />
      <p className={plain.note}>{t("questionForm.understoodNote")}</p>
      <button type="submit" className={plain.button}>
        {t("questionForm.make")}
      </button>
    </section>
  );
}
