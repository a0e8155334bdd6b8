import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import { type LookUpMatch, type LookUpView, nearestAsked } from "#core/look-ups/look-up";
import { LAID_OPEN } from "#core/similarity/fuse";
import { surenessOf } from "#core/similarity/sureness";
import { Cosine } from "../cosine.tsx";
import { EntryLine } from "../entry-line.tsx";
import { Likeness } from "../likeness.tsx";
import plain from "../plain.module.css";
import { Sureness } from "../sureness.tsx";
import { DateByLink } from "../worksheet/date-by-link.tsx";
import { Findings } from "./findings.tsx";
import styles from "./matches.module.css";

/** How many are shown large; the rest are smaller rows, and the farther ones unfold. */
const LARGE = 3;
/** Fewer when the page has several rankings: as many laid open, and one of them large. */
const SHORT = { large: 1, open: 4 } as const;

type MatchesProps = {
  readonly view: LookUpView;
  /** The id of the heading, when the page has several rankings. */
  readonly id?: string;
  readonly short?: boolean;
};

/**
 * The nearest entries, best first. What an answer claims stands apart from what is shown for comparison; when none
 * fits, all are.
 */
export function Matches({ view, id = "matches", short = false }: MatchesProps) {
  const t = useTranslations("lookUp");
  const format = useFormatter();
  const likenesses = view.matches.flatMap(({ similarity }) => similarity ?? []);
  const nearestLikeness = likenesses.length > 0 ? Math.max(...likenesses) : undefined;
  const { large: most, open: shown } = short ? SHORT : { large: LARGE, open: LAID_OPEN };
  const isClaimed = ({ probability }: LookUpMatch) =>
    probability !== null && surenessOf(probability) !== null;
  const claimed = view.noneFits ? [] : view.matches.filter(isClaimed);
  const others = view.matches.filter((match) => !claimed.includes(match));
  const open = others.slice(0, Math.max(0, shown - claimed.length));
  const further = others.slice(open.length);
  const large = Math.max(0, most - claimed.length);
  if (view.matches.length === 0) return <p>{t("emptyReference")}</p>;
  return (
    <section aria-labelledby={id}>
      <h2 id={id} className={view.noneFits ? styles.heading : plain.hidden}>
        {view.noneFits ? t("forComparison") : t("nearestHeading")}
      </h2>
      {claimed.length > 0 && <MatchList view={view} matches={claimed} large={most} isClaimed />}
      {claimed.length > 0 && open.length > 0 && <h2 className={styles.next}>{t("lessLikely")}</h2>}
      <MatchList view={view} matches={open} large={large} />
      {further.length > 0 && (
        <details className={styles.further}>
          <summary>{t("further", { count: further.length })}</summary>
          <MatchList view={view} matches={further} large={0} />
        </details>
      )}
      <p className={plain.note}>{t("searched", { count: format.number(view.searched) })}</p>
      {view.noneProbability === null && nearestLikeness !== undefined && (
        <Cosine similarity={nearestLikeness} model={view.model} of="nearest" />
      )}
    </section>
  );
}

type MatchListProps = {
  readonly view: LookUpView;
  readonly matches: readonly LookUpMatch[];
  readonly large: number;
  /** Whether the answer stands by these: what is only shown for comparison dates nothing. */
  readonly isClaimed?: boolean;
};

function MatchList({ view, matches, large, isClaimed = false }: MatchListProps) {
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
            lead={
              match.probability === null ? (
                <Likeness likeness={match.likeness} />
              ) : (
                <Sureness probability={match.probability} />
              )
            }
          >
            <Findings asked={view.asked} match={match} />
            {i < large && (
              <p className={plain.note}>
                <Why match={match} />
              </p>
            )}
            {match.photograph && (
              <p className={styles.compare}>
                <Link
                  className={i < large ? plain.quiet : plain.link}
                  href={`/look-ups/${view.id}/compare/${match.entry.slug}?${comparing(view, match)}`}
                  aria-label={t("compareWith", { title: match.entry.title })}
                >
                  {t("compare")}
                </Link>{" "}
                {isClaimed && match.probability !== null && (
                  <DateByLink entry={match.entry} className={plain.link} probability={match.probability} />
                )}
              </p>
            )}
          </EntryLine>
        </li>
      ))}
    </ol>
  );
}

/** Which photographs are compared: of several asked with, the one that resembles the entry most. */
function comparing({ photographs }: LookUpView, match: LookUpMatch): URLSearchParams {
  const asked = photographs.length > 1 ? nearestAsked(match) : null;
  return new URLSearchParams({
    photograph: match.photograph?.id ?? "",
    ...(asked === null ? {} : { asked: String(asked) }),
  });
}

/** Why an entry is listed: which photograph, how it was turned, and how many of the entry's photographs are near. */
function Why({ match }: { readonly match: LookUpMatch }) {
  const t = useTranslations("lookUp");
  const turn = ((Math.round(match.turn) % 360) + 360) % 360;
  const several = match.seen.length;
  const near = { near: match.photographsNear, count: match.entry.photographCount };
  if (!match.photograph) return t("whyLettersAlone");
  return (
    <>
      {match.foundBy === "letters" && <>{t("whyLetters")} </>}
      {turn === 0 ? t("whyUpright", { several }) : t("whyTurned", { turn, several })}{" "}
      {match.photographsNear > 0 && t("whyNear", near)}
    </>
  );
}
