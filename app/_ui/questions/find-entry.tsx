import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntrySummary } from "#core/entries/entry";
import { EntryLine } from "../entry-line.tsx";
import plain from "../plain.module.css";
import styles from "./form.module.css";

type FindEntryProps = {
  readonly id: string;
  readonly find: string;
  /** Entries found; null when nothing was looked for yet. */
  readonly found: readonly EntrySummary[] | null;
};

/** Looks for the entry to propose, by words or by its address. A plain form. */
export function FindEntry({ id, find, found }: FindEntryProps) {
  const t = useTranslations("questionForm");
  return (
    <>
      <search>
        <form action={`/questions/${id}/propose`} className={styles.find}>
          <div className={plain.field}>
            <label htmlFor="find">{t("find")}</label>
            <input className={plain.input} id="find" name="find" type="search" defaultValue={find} />
          </div>
          <button type="submit" className={plain.quiet}>
            {t("findGo")}
          </button>
        </form>
      </search>
      {found !== null && (
        <section aria-labelledby="found-entries">
          <h3 id="found-entries" className={plain.label}>
            {t("foundEntries", { count: found.length })}
          </h3>
          <ol>
            {found.map((entry) => (
              <li key={entry.slug}>
                <EntryLine entry={entry}>
                  <p>
                    <Link
                      className={plain.quiet}
                      href={`/questions/${id}/propose?entry=${entry.slug}`}
                      aria-label={t("proposeThisTitle", { title: entry.title })}
                    >
                      {t("proposeThis")}
                    </Link>
                  </p>
                </EntryLine>
              </li>
            ))}
          </ol>
        </section>
      )}
    </>
  );
}
