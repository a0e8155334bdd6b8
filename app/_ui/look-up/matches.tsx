import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { LookUpMatch, LookUpView } from "#core/look-ups/look-up";
import { Cosine } from "../cosine.tsx";
import { EntryLine } from "../entry-line.tsx";
import { Likeness } from "../likeness.tsx";
import plain from "../plain.module.css";
import styles from "./matches.module.css";

/** How many are shown large, how many at all; the rest unfold. */
const LARGE = 3;
const SHOWN = 8;

/** The nearest entries, best first, one under the other. */
export function Matches({ view }: { readonly view: LookUpView }) {
  const t = useTranslations("lookUp");
  const format = useFormatter();
  const [nearest] = view.matches;
  const further = view.matches.slice(SHOWN);
  if (!nearest) return <p>{t("emptyReference")}</p>;
  return (
    <section aria-labelledby="matches">
      <h2 id="matches" className={view.noneFits ? styles.heading : plain.hidden}>
        {view.noneFits ? t("forComparison") : t("nearestHeading")}
      </h2>
      <MatchList view={view} matches={view.matches.slice(0, SHOWN)} large={LARGE} />
      {further.length > 0 && (
        <details className={styles.further}>
          <summary>{t("further", { count: further.length })}</summary>
          <MatchList view={view} matches={further} large={0} />
        </details>
      )}
      <p className={plain.note}>{t("searched", { count: format.number(view.searched) })}</p>
      <Cosine similarity={nearest.similarity} model={view.model} of="nearest" />
    </section>
  );
}

type MatchListProps = {
  readonly view: LookUpView;
  readonly matches: readonly LookUpMatch[];
  readonly large: number;
};

function MatchList({ view, matches, large }: MatchListProps) {
  const t = useTranslations("lookUp");
  return (
    <ol className={styles.matches}>
      {matches.map((match, i) => (
        <li key={match.entry.slug}>
          <EntryLine
            entry={match.entry}
            photograph={match.photograph}
            large={i < large}
            eager={i < 2}
            lead={<Likeness likeness={match.likeness} />}
          >
            {i < large && (
              <p className={plain.note}>
                <Why match={match} />
              </p>
            )}
            <p className={styles.compare}>
              <Link
                className={i < large ? plain.quiet : plain.link}
                href={`/look-ups/${view.id}/compare/${match.entry.slug}?photograph=${match.photograph.id}`}
                aria-label={t("compareWith", { title: match.entry.title })}
              >
                {t("compare")}
              </Link>
            </p>
          </EntryLine>
        </li>
      ))}
    </ol>
  );
}

/** Why an entry is listed: which photograph, how it was turned, and how many of the entry's photographs are near. */
function Why({ match }: { readonly match: LookUpMatch }) {
  const t = useTranslations("lookUp");
  const turn = ((Math.round(match.turn) % 360) + 360) % 360;
  const near = { near: match.photographsNear, count: match.entry.photographCount };
  return (
    <>
      {turn === 0 ? t("whyUpright") : t("whyTurned", { turn })} {t("whyNear", near)}
    </>
  );
}
