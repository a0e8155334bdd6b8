import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { offersChallenge } from "#core/review/what-is-offered";
import { ChallengeForm } from "#ui/review/challenge-form";
import { WhyNot } from "#ui/review/why-not";
import { Viewer } from "#ui/viewer/viewer";
import { showEntry } from "#web/reading";
import { actor, keptForm, makeToken, now } from "#web/reading-desk";
import { showHistory } from "#web/reading-reviews";
import styles from "../../../../_ui/review/review.module.css";

type Props = {
  readonly params: Promise<{ readonly slug: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("challenge"))("title"), robots: { index: false } };
}

/** A documented objection to the verified revision. */
export default async function ChallengePage({ params, searchParams }: Props) {
  const [{ slug }, query, t] = await Promise.all([params, searchParams, getTranslations("challenge")]);
  const traced = await showHistory(slug);
  const entry = await showEntry(slug);
  if (!traced || !entry) notFound();
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const why = offersChallenge(traced.history, await actor(), await now());
  const { verified } = traced.history;
  return (
    <article className={styles.page}>
      <header className={styles.head}>
        <p>
          <Link href={`/entries/${slug}`}>{entry.content.title}</Link>
        </p>
        <h1>{t("title")}</h1>
        <p>{t("lede")}</p>
      </header>
      <div className={styles.says}>
        {why || verified === null ? (
          why && <WhyNot what={t("cannot")} why={why} page={`/entries/${slug}/challenge`} />
        ) : (
          <ChallengeForm slug={slug} revision={verified} form={form} token={await makeToken()} />
        )}
      </div>
      <div className={styles.photographs}>
        <Viewer title={entry.content.title} photographs={entry.photographs} />
      </div>
    </article>
  );
}
