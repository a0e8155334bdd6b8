import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import { How } from "../entry-line.tsx";
import { PeriodWords } from "../period-words.tsx";
import plain from "../plain.module.css";
import { StateSign } from "../state-sign.tsx";
import { DateByLink } from "../worksheet/date-by-link.tsx";
import styles from "./entry.module.css";

/** What it is, whose, when, and how sure, before anything else. */
export function EntryHead({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const { summary, content } = view;
  return (
    <header className={styles.head}>
      <p className={styles.how}>
        <How entry={summary} />
      </p>
      <h1>{content.title}</h1>
      <p className={styles.maker}>
        {summary.maker ? (
          <>
            {content.makerPart && `${t(`parts.${content.makerPart}`)} `}
            <Link href={`/makers/${summary.maker.slug}`}>{summary.maker.name}</Link>
            {summary.maker.place && `, ${summary.maker.place}`}
          </>
        ) : (
          t("makerUnknown")
        )}
      </p>
      <p className={styles.maker}>
        {t("used")} <PeriodWords period={summary.period} />
      </p>
      {summary.period && (
        <p className={plain.note}>
          <DateByLink entry={summary} />
        </p>
      )}
      <p>
        <StateSign state={summary.state} />
      </p>
    </header>
  );
}
