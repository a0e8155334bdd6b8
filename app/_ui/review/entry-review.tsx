import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Actor } from "#core/members/member";
import { may } from "#core/permissions";
import type { EntryHistory } from "#core/review/entry-history";
import { isOpen } from "#core/review/find-in-history";
import { tallyReview } from "#core/review/weigh-votes";
import { offersChallenge } from "#core/review/what-is-offered";
import styles from "./entry-review.module.css";
import { Who } from "./happened.tsx";
import { When } from "./when.tsx";

type EntryReviewProps = {
  readonly slug: string;
  readonly history: EntryHistory;
  readonly by: Actor;
  readonly at: string;
};

/** How an entry stands with its reviewers: what is disputed and why, the votes, and what can be done about it. */
export function EntryReview({ slug, history, by, at }: EntryReviewProps) {
  const t = useTranslations("entryReview");
  const review = history.reviews.at(-1);
  const path = `/entries/${slug}`;
  const challengeable = offersChallenge(history, by, at);
  return (
    <div className={styles.review}>
      <OpenChallenges slug={slug} history={history} />
      {review && <Counted slug={slug} tally={tallyReview(history, review)} over={review.end !== null} />}
      {history.locked && <p>{t("locked")}</p>}
      <ul className={styles.links}>
        {!history.locked && history.replacedBy === null && (
          <li>
            <Link href={`${path}/revise`}>{t("revise")}</Link>
          </li>
        )}
        {(challengeable === null || challengeable.rule === "sign-in-first") && history.verified !== null && (
          <li>
            <Link href={`${path}/challenge`}>{t("challenge")}</Link>
          </li>
        )}
        <li>
          <Link href={`${path}/trail`}>{t("history")}</Link>
        </li>
        {may(by, "hide content") && (
          <li>
            <Link href={`${path}/moderate`}>{t("moderate")}</Link>
          </li>
        )}
      </ul>
    </div>
  );
}

function OpenChallenges({ slug, history }: Pick<EntryReviewProps, "slug" | "history">) {
  const t = useTranslations("entryReview");
  const claims = useTranslations("challenge.claims");
  return history.challenges.filter(isOpen).map(({ id, claim, by, at, evidence, decision }) => (
    <div key={id} className={styles.dispute}>
      <p>
        {t.rich(decision ? "underAppeal" : "disputed", {
          claim: claims(claim),
          who: () => <Who by={by} />,
          when: () => <When at={at} />,
        })}
      </p>
      <p className={styles.quote}>{evidence.text}</p>
      <p>
        <Link href={`/entries/${slug}/challenges/${id}`}>{t("toChallenge")}</Link>
      </p>
    </div>
  ));
}

type CountedProps = {
  readonly slug: string;
  readonly tally: ReturnType<typeof tallyReview>;
  readonly over: boolean;
};

function Counted({ slug, tally: { support, oppose, counted }, over }: CountedProps) {
  const t = useTranslations("entryReview");
  return (
    <p>
      {t.rich("votes", {
        over: String(over),
        counted,
        support,
        oppose,
        link: (words) => <Link href={`/entries/${slug}/review`}>{words}</Link>,
      })}
    </p>
  );
}
