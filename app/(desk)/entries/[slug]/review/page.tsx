import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { whatIsMissing } from "#core/review/close";
import { weighVotes } from "#core/review/weigh-votes";
import { offersAnswer } from "#core/review/what-is-offered";
import { EntryAgainst } from "#ui/entry/entry-against";
import { EntryWhat } from "#ui/entry/entry-what";
import { EntryWhy } from "#ui/entry/entry-why";
import { OtherErrors } from "#ui/questions/form-field";
import { NearestEntries } from "#ui/review/nearest-entries";
import { ReviewHead } from "#ui/review/review-head";
import { Standing } from "#ui/review/standing";
import { Votes } from "#ui/review/votes";
import { YourPart } from "#ui/review/your-part";
import { Said } from "#ui/said";
import { Viewer } from "#ui/viewer/viewer";
import { besides, keptForm, nearestTo, showReview } from "#web/reading-desk";
import styles from "../../../../_ui/review/review.module.css";

type Props = {
  readonly params: Promise<{ readonly slug: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const SAID = ["vote", "answer", "withdraw"] as const;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [shown, t] = await Promise.all([showReview((await params).slug), getTranslations("review")]);
  return shown ? { title: t("title", { title: shown.revision.view.content.title }) } : {};
}

/** The review of an entry's latest submitted revision: what it says, how it stands, who voted how, and one's own part. */
export default async function ReviewPage({ params, searchParams }: Props) {
  const [{ slug }, query, t] = await Promise.all([params, searchParams, getTranslations("review")]);
  const shown = await showReview(slug);
  if (!shown) notFound();
  const { history, review, revision, by, at } = shown;
  const [nearest, beside] = await Promise.all([nearestTo(shown), besides(shown)]);
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const said = SAID.find((each) => each === query.said);
  const votes = weighVotes(history, review);
  const names = new Map(votes.map(({ vote }) => [vote.voter.id, vote.voter.name]));
  const { view } = revision;
  return (
    <article className={styles.page}>
      <ReviewHead shown={shown} beside={beside} />
      {(said || form.errors.length > 0) && (
        <div className={styles.whole}>
          {said && <Said>{t(`said.${said}`)}</Said>}
          <OtherErrors form={form} shown={["choice", "basis", "reason", "answer"]} />
        </div>
      )}
      <div className={styles.photographs}>
        <Viewer title={view.content.title} photographs={view.photographs} />
      </div>
      <div className={styles.says}>
        <EntryWhat view={view} />
        <EntryWhy view={view} />
        <EntryAgainst view={view} />
        <p>
          <Link href={`/entries/${slug}`}>{t("toEntry")}</Link>
        </p>
      </div>
      <div className={styles.whole}>
        <NearestEntries nearest={nearest} />
      </div>
      <div className={styles.votesSide}>
        <Standing review={review} outlook={whatIsMissing(review, history, at)} names={names} />
        <Votes
          slug={slug}
          revision={review.revision}
          votes={votes}
          form={form}
          answer={(voter) => offersAnswer(history, review, voter, by, at)}
        />
      </div>
      <div className={styles.yourSide}>
        <YourPart shown={shown} form={form} />
      </div>
    </article>
  );
}
