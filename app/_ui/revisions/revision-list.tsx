import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { RevisionLine } from "#core/entries/revision";
import type { EntryState } from "#core/entries/vocabulary";
import { StateSign } from "../state-sign.tsx";
import styles from "./revisions.module.css";

type RevisionListProps = {
  readonly slug: string;
  readonly revisions: readonly (RevisionLine & { readonly state: EntryState })[];
  /** Number of the revision that the entry's page shows. */
  readonly shown: number;
};

/** All revisions, the newest first: who, when, why, and how each stands. */
export function RevisionList({ slug, revisions, shown }: RevisionListProps) {
  const t = useTranslations("revisions");
  const format = useFormatter();
  const path = `/entries/${slug}`;
  return (
    <ol className={styles.list} reversed>
      {revisions.toReversed().map((revision) => {
        const { number, createdAt, createdBy, summary, parents, contentHash, state } = revision;
        return (
          <li key={number}>
            <div className={styles.lineHead}>
              <h2>
                <Link href={`${path}/revisions/${number}`}>{t("number", { number })}</Link>
                {number === shown && <span className={styles.note}> {t("shown")}</span>}
              </h2>
              <StateSign state={state} />
            </div>
            <p className={styles.note}>
              {t("by", { name: createdBy })},{" "}
              <time dateTime={createdAt}>
                {format.dateTime(new Date(createdAt), { dateStyle: "long", timeStyle: "short" })}
              </time>
              {parents.length > 0 &&
                `, ${t("from", {
                  count: parents.length,
                  list: format.list(parents.map((parent) => t("number", { number: parent }))),
                })}`}
            </p>
            <p className={summary === "" ? styles.nothing : styles.quote}>{summary || t("noSummary")}</p>
            <p className={styles.ways}>
              {parents.map((parent) => (
                <Link key={parent} href={`${path}/difference?from=${parent}&to=${number}`}>
                  {parents.length === 1 ? t("compareWith") : t("difference", { number: parent })}
                </Link>
              ))}
              <Link href={`${path}/revise?from=${number}`}>{t("restore")}</Link>
            </p>
            <p className={styles.hash}>{contentHash}</p>
          </li>
        );
      })}
    </ol>
  );
}
