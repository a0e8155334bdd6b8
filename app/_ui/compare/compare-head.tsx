import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntrySummary } from "#core/entries/entry";
import type { LookUpMatch } from "#core/look-ups/look-up";
import { Cosine } from "../cosine.tsx";
import { Likeness } from "../likeness.tsx";
import { PeriodWords } from "../period-words.tsx";
import { Sureness } from "../sureness.tsx";
import styles from "./compare.module.css";

/** What is compared with, and how near the look-up found it. */
export function CompareHead({
  entry,
  match,
  model,
}: {
  readonly entry: EntrySummary;
  readonly match: LookUpMatch | null;
  /** The model that found it, with its version. */
  readonly model: string;
}) {
  const t = useTranslations("comparePage");
  return (
    <header className={styles.head}>
      <div>
        <h1 className={styles.title}>
          <Link href={`/entries/${entry.slug}`}>{entry.title}</Link>
        </h1>
        <p>
          {entry.maker && `${entry.maker.name}, `}
          <PeriodWords period={entry.period} />
        </p>
      </div>
      {match ? (
        <div>
          {match.probability === null ? (
            <Likeness likeness={match.likeness} />
          ) : (
            <Sureness probability={match.probability} />
          )}
          {match.similarity !== null && <Cosine similarity={match.similarity} model={model} of="one" />}
        </div>
      ) : (
        <p>{t("notListed")}</p>
      )}
    </header>
  );
}
