import { useFormatter, useTranslations } from "next-intl";
import type { Missing, Outlook } from "#core/review/close";
import type { Review } from "#core/review/entry-history";
import type { Tally } from "#core/review/tally";
import { lengthOf } from "./hours.ts";
import { PolicyWords } from "./policy-words.tsx";
import styles from "./review.module.css";
import { When } from "./when.tsx";

type StandingProps = {
  readonly review: Review;
  readonly outlook: Outlook;
  /** Names of voters by their ids. */
  readonly names: ReadonlyMap<string, string>;
};

/** How a review stands: the votes for and against, and what is missing; or how it ended. */
export function Standing({ review, outlook, names }: StandingProps) {
  const t = useTranslations("review");
  const { end } = review;
  const tally = end && "tally" in end ? end.tally : outlook.tally;
  return (
    <section aria-labelledby="standing" className={styles.standing}>
      <h2 id="standing">{t("standingHeading")}</h2>
      <Counts tally={tally} />
      {end ? <Ended end={end} /> : <Open outlook={outlook} names={names} days={review.policy.days} />}
      <PolicyWords policy={review.policy} />
    </section>
  );
}

function Counts({ tally }: { readonly tally: Tally }) {
  const t = useTranslations("review");
  const { support, oppose, abstain, notCounted } = tally;
  return (
    <dl className={styles.counts}>
      {[
        [t("for"), support],
        [t("against"), oppose],
        [t("abstained"), abstain],
        [t("notCounted"), notCounted.length],
      ].map(([name, count]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{count}</dd>
        </div>
      ))}
    </dl>
  );
}

function Ended({ end }: { readonly end: NonNullable<Review["end"]> }) {
  const t = useTranslations("review");
  return (
    <>
      <p className={styles.outcome}>
        {t(`ended.${end.is}`)} <When at={end.at} />
      </p>
      {end.is === "withdrawn" && end.reason !== "" && <p className={styles.quote}>{end.reason}</p>}
    </>
  );
}

function Open({
  outlook,
  names,
  days,
}: Pick<StandingProps, "outlook" | "names"> & { readonly days: number }) {
  const t = useTranslations("review");
  const { missing, earliest, ends } = outlook;
  return (
    <>
      {missing.length > 0 && (
        <>
          <h3>{t("missingHeading")}</h3>
          <ul className={styles.rules}>
            {missing.map((each) => (
              <li key={each.is}>
                <MissingWords missing={each} names={names} />
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        {earliest === null ? t("neverInTime") : t.rich("earliest", { when: () => <When at={earliest} /> })}{" "}
        {ends === null ? t("endsNever", { days }) : t.rich("endsOn", { when: () => <When at={ends} /> })}
      </p>
    </>
  );
}

function MissingWords({
  missing,
  names,
}: {
  readonly missing: Missing;
  readonly names: ReadonlyMap<string, string>;
}) {
  const t = useTranslations("review");
  const format = useFormatter();
  switch (missing.is) {
    case "votes":
      return t("missing.votes", { counted: missing.counted, needed: missing.needed });
    case "support":
      return t("missing.support", {
        support: missing.support,
        oppose: missing.oppose,
        of: missing.of,
        outOf: missing.outOf,
      });
    case "time":
      return t("missing.time", { open: t("length", lengthOf(missing.hours)) });
    case "answers":
      return t("missing.answers", { names: format.list(missing.voters.map((id) => names.get(id) ?? id)) });
    case "challenges":
      return t("missing.challenges", { count: missing.open.length });
    case "content":
      return t("missing.content", { lacks: format.list(missing.lacks.map((lack) => t(`lacks.${lack}`))) });
    case "verified meanwhile":
      return t("missing.verified");
    case "replaced":
      return t("missing.replaced", { by: missing.by });
    case "locked":
      return t("missing.locked");
  }
}
