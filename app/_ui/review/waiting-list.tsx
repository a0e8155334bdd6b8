import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { Field } from "#core/entries/vocabulary";
import type { UnderReview } from "#core/review/review-lists";
import { Cut } from "../cut.tsx";
import styles from "./desk.module.css";

type WaitingListProps = {
  readonly field: Field | null;
  readonly waiting: readonly UnderReview[];
  /** What waits for one's own vote is shown large. */
  readonly level: "mine" | "others";
};

/** Revisions of one field that are under review. */
export function WaitingList({ field, waiting, level }: WaitingListProps) {
  const t = useTranslations("reviewDesk");
  const fields = useTranslations("entryFields");
  const format = useFormatter();
  const name = field === null ? t("noField") : fields(field);
  const id = `${level}-${(field ?? "none").replaceAll(" ", "-")}`;
  const Heading = level === "mine" ? "h2" : "h3";
  return (
    <section aria-labelledby={id}>
      <Heading id={id} className={styles.field}>
        {name}
      </Heading>
      <ol className={level === "mine" ? styles.waiting : styles.waitingSmall}>
        {waiting.map((each) => (
          <li key={each.revision}>
            <Link href={`/entries/${each.slug}/review`} className={styles.item}>
              <span className={styles.mat}>
                {each.photograph && (
                  <Cut image={each.photograph} alt="" shownAt={level === "mine" ? 280 : 140} />
                )}
              </span>
              <span className={styles.words}>
                <span className={styles.title}>{each.title}</span>
                <span className={styles.facts}>
                  {t("item", {
                    number: each.number,
                    name: each.createdBy,
                    day: format.dateTime(new Date(each.submittedAt), { dateStyle: "long" }),
                  })}
                </span>
                <span className={styles.facts}>
                  {each.voted ? t("voted") : t("voters", { count: each.voters })}
                </span>
              </span>
            </Link>
          </li>
        ))}
      </ol>
    </section>
  );
}
