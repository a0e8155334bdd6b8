import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import styles from "./entry.module.css";
import { Facts } from "./facts.tsx";

/** Who says so: the revision shown, whose it is and when, and the hash that fixes what it says. */
export function EntrySays({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const format = useFormatter();
  const { revision, summary } = view;
  return (
    <section aria-labelledby="says">
      <h2 id="says">{t("says")}</h2>
      <p>{summary.state === "under review" ? t("noVotes") : t("votesNote")}</p>
      <Facts
        facts={[
          [
            t("revision"),
            <span key="n" className={styles.plain}>
              <Link href={`/entries/${summary.slug}/revisions/${revision.number}`}>
                {t("revisionNumber", { number: revision.number })}
              </Link>
              , <Link href={`/entries/${summary.slug}/history`}>{t("historyLink")}</Link>
            </span>,
          ],
          [t("by"), revision.createdBy],
          [
            t("on"),
            <time key="t" className={styles.plain} dateTime={revision.createdAt}>
              {format.dateTime(new Date(revision.createdAt), { dateStyle: "long" })}
            </time>,
          ],
          [
            t("hash"),
            <code key="h" className={styles.hash}>
              {revision.contentHash}
            </code>,
          ],
        ]}
      />
    </section>
  );
}
