import Link from "next/link";
import { useTranslations } from "next-intl";
import { Fragment } from "react";
import type { RevisionView } from "#core/entries/revision";
import type { By } from "#core/review/entry-event";
import type { EntryHistory, Review } from "#core/review/entry-history";
import { findRevision } from "#core/review/find-in-history";
import { revisionState } from "#core/review/standing";
import { How } from "../entry-line.tsx";
import plain from "../plain.module.css";
import { StateSign } from "../state-sign.tsx";
import { Who } from "./happened.tsx";
import styles from "./review.module.css";
import { ReviewKeys } from "./review-keys.tsx";
import { When } from "./when.tsx";

type ReviewHeadProps = {
  readonly shown: {
    readonly history: EntryHistory;
    readonly review: Review;
    readonly revision: RevisionView;
    readonly coAuthors: readonly By[];
  };
  /** Entries whose review comes before and after among what waits for one's vote. */
  readonly beside: {
    readonly previous: string | null;
    readonly next: string | null;
    readonly count: number;
  };
};

/** Which revision is reviewed, since when, and the way to the next one that waits. */
export function ReviewHead({ shown: { history, review, revision, coAuthors }, beside }: ReviewHeadProps) {
  const t = useTranslations("review");
  const fields = useTranslations("entryFields");
  const { view } = revision;
  const number = revision.line.number;
  const field = findRevision(history, review.revision)?.field ?? null;
  const waits = beside.count > 0;
  return (
    <header className={styles.head}>
      {waits && (
        <nav className={styles.queue} aria-label={t("queue")}>
          <Link href="/review">{t("waitsForYou", { count: beside.count })}</Link>
          {beside.previous && (
            <Link href={`/entries/${beside.previous}/review`} rel="prev">
              {t("previous")}
            </Link>
          )}
          {beside.next && (
            <Link href={`/entries/${beside.next}/review`} rel="next">
              {t("next")}
            </Link>
          )}
          <ReviewKeys words={{ use: t("useKeys"), keys: t("keys") }} />
        </nav>
      )}
      <p className={styles.kind}>
        <How entry={view.summary} />
      </p>
      <h1>{t("title", { title: view.content.title })}</h1>
      <p className={plain.note}>
        {t.rich("submitted", {
          number,
          name: review.submittedBy.name,
          field: field === null ? t("noField") : fields(field),
          when: () => <When at={review.submittedAt} />,
        })}
      </p>
      {coAuthors.length > 0 && (
        <p className={plain.note}>
          {t("coAuthors")}{" "}
          {coAuthors.map((author, i) => (
            <Fragment key={author.id}>
              {i > 0 && ", "}
              <Who by={author} />
            </Fragment>
          ))}
        </p>
      )}
      <p>
        <StateSign state={revisionState(history, review.revision)} />
      </p>
      {revision.line.summary !== "" && <p className={styles.quote}>{revision.line.summary}</p>}
    </header>
  );
}
