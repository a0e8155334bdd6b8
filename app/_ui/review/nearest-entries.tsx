import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntrySummary } from "#core/entries/entry";
import type { Likeness as LikenessWord } from "#core/similarity/likeness";
import { Cut } from "../cut.tsx";
import { Likeness } from "../likeness.tsx";
import { StateSign } from "../state-sign.tsx";
import styles from "./review.module.css";

type NearestEntriesProps = {
  readonly nearest: readonly { readonly entry: EntrySummary; readonly likeness: LikenessWord }[];
};

/** The entries whose photographs come nearest, so that a duplicate is seen before it is verified. */
export function NearestEntries({ nearest }: NearestEntriesProps) {
  const t = useTranslations("review");
  return (
    <section aria-labelledby="nearest">
      <h2 id="nearest">{t("nearestHeading")}</h2>
      <p>{nearest.length === 0 ? t("nearestNone") : t("nearestNote")}</p>
      <ul className={styles.nearest}>
        {nearest.map(({ entry, likeness }) => (
          <li key={entry.slug}>
            <Link href={`/entries/${entry.slug}`}>
              <span className={styles.mat}>
                {entry.photograph && <Cut image={entry.photograph} alt="" shownAt={260} />}
              </span>
              <span className={styles.nearTitle}>{entry.title}</span>
            </Link>
            <p className={styles.nearMaker}>{entry.maker?.name ?? t("noMaker")}</p>
            <Likeness likeness={likeness} />
            <p className={styles.nearMaker}>
              <StateSign state={entry.state} />
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
