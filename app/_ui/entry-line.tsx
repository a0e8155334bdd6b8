import Link from "next/link";
import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { EntrySummary } from "#core/entries/entry";
import type { Photograph } from "#core/photographs/photograph";
import { Cut } from "./cut.tsx";
import styles from "./entry-line.module.css";
import { PeriodWords } from "./period-words.tsx";
import { StateSign } from "./state-sign.tsx";

type EntryLineProps = {
  readonly entry: EntrySummary;
  /** The photograph to show; the one that stands for the entry when left out. */
  readonly photograph?: Photograph | null;
  readonly large?: boolean;
  readonly eager?: boolean;
  /** False on the maker's own page. */
  readonly withMaker?: boolean;
  /** Says more, under what every line says. */
  readonly children?: ReactNode;
  /** Stands before the title, for a result's likeness. */
  readonly lead?: ReactNode;
};

/** One entry in a list: a large photograph, and what it is, whose, when and how sure. */
export function EntryLine({
  entry,
  photograph = entry.photograph,
  large = false,
  eager = false,
  withMaker = true,
  children,
  lead,
}: EntryLineProps) {
  const t = useTranslations("entry");
  const href = `/entries/${entry.slug}`;
  return (
    <article className={large ? `${styles.line} ${styles.large}` : styles.line}>
      <Link href={href} className={styles.mat} tabIndex={-1} aria-hidden="true">
        {photograph ? (
          <Cut image={photograph} alt="" shownAt={large ? 480 : 280} eager={eager} snug={large} />
        ) : (
          <span className={styles.none}>{t("noPhotograph")}</span>
        )}
      </Link>
      <div className={styles.words}>
        {lead}
        <div className={styles.name}>
          <h3 className={styles.title}>
            <Link href={href}>{entry.title}</Link>
          </h3>
          <p className={styles.state}>
            <StateSign state={entry.state} />
          </p>
        </div>
        {withMaker && (
          <p className={styles.maker}>
            {entry.maker ? (
              <>
                <Link href={`/makers/${entry.maker.slug}`}>{entry.maker.name}</Link>
                {entry.maker.place && <>, {entry.maker.place}</>}
              </>
            ) : (
              t("makerUnknown")
            )}
          </p>
        )}
        <p className={styles.period}>
          <PeriodWords period={entry.period} />
        </p>
        <p className={styles.how}>
          <How entry={entry} />
        </p>
        {children ?? <p className={styles.state}>{t("photographs", { count: entry.photographCount })}</p>}
      </div>
    </article>
  );
}

/** What kind of sign it is and how it came onto what: "Mark, impressed, stoneware". */
export function How({ entry }: { readonly entry: Pick<EntrySummary, "kind" | "technique" | "material"> }) {
  const t = useTranslations();
  const technique = entry.technique ? t(`techniques.${entry.technique}`) : "";
  // What is made of paper is also "paper" by technique; once is enough.
  const material = entry.material === technique ? "" : entry.material;
  return [t(`kinds.${entry.kind}`), technique, material].filter((part) => part !== "").join(", ");
}
