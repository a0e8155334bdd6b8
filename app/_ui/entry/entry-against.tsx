import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import styles from "./entry.module.css";
import { Facts } from "./facts.tsx";
import { relatedOnce } from "./related-once.ts";
import { RelationWords } from "./relation-words.tsx";

/** What speaks against it: how it is told apart, what was copied; and apart from that, what it may be confused with. */
export function EntryAgainst({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const { content } = view;
  const nothing = content.distinguish === "" && content.reproductions === "";
  const confused = relatedOnce(view.relations).filter(
    ({ kinds }) => kinds.includes("variant of") || kinds.includes("imitated by"),
  );
  return (
    <section aria-labelledby="against">
      <h2 id="against">{t("against")}</h2>
      {nothing && <p>{t("nothingAgainst")}</p>}
      <Facts
        facts={[
          [t("distinguish"), content.distinguish],
          [t("reproductions"), content.reproductions],
        ]}
      />
      {confused.length > 0 && (
        <>
          <h3 className={styles.sub}>{t("confusedWith")}</h3>
          <ul className={styles.sources}>
            {confused.map(({ entry, kinds }) => (
              <li key={entry.slug}>
                <Link href={`/entries/${entry.slug}`}>{entry.title}</Link>{" "}
                <span className={styles.relation}>
                  <RelationWords kinds={kinds} />
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
