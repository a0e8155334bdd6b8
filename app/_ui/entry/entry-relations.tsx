import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import { Cut } from "../cut.tsx";
import { PeriodWords } from "../period-words.tsx";
import styles from "./entry.module.css";
import { relatedOnce } from "./related-once.ts";
import { RelationWords } from "./relation-words.tsx";

/** The marks before, after and beside this one, each with a small picture. */
export function EntryRelations({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  if (view.relations.length === 0) return null;
  return (
    <section aria-labelledby="relations">
      <h2 id="relations">{t("relationsHeading")}</h2>
      <ul className={styles.relations}>
        {relatedOnce(view.relations).map(({ kinds, entry }) => (
          <li key={entry.slug}>
            <Link href={`/entries/${entry.slug}`}>
              <span className={styles.small}>
                {entry.photograph && <Cut image={entry.photograph} alt="" shownAt={120} />}
              </span>
              <span>
                <span className={styles.relation}>
                  <RelationWords kinds={kinds} />
                </span>
                <span className={styles.related}>{entry.title}</span>
                <span className={styles.when}>
                  <PeriodWords period={entry.period} />
                </span>
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
