import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { findChallenge, findRevision } from "#core/review/find-in-history";
import { EntryWhat } from "#ui/entry/entry-what";
import { EntryWhy } from "#ui/entry/entry-why";
import { OtherErrors } from "#ui/questions/form-field";
import { Appeal } from "#ui/review/appeal";
import { ChallengeSaid } from "#ui/review/challenge-said";
import { Decision } from "#ui/review/decision";
import { Said } from "#ui/said";
import { Viewer } from "#ui/viewer/viewer";
import { actor, keptForm, now, showNumbered } from "#web/reading-desk";
import { showHistory } from "#web/reading-reviews";
import challenges from "../../../../../_ui/review/challenge.module.css";
import styles from "../../../../../_ui/review/review.module.css";

type Props = {
  readonly params: Promise<{ readonly slug: string; readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const SAID = ["challenge", "decide", "appeal", "appeal-vote"] as const;
const SHOWN = ["ruling", "consequence", "into", "reason", "choice"];

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("challenge"))("title") };
}

/** A challenge: what is claimed on which evidence, how it was decided and why, and whether that was appealed. */
export default async function ChallengeShownPage({ params, searchParams }: Props) {
  const [{ slug, id }, query, t] = await Promise.all([params, searchParams, getTranslations("challenge")]);
  const history = (await showHistory(slug))?.history;
  const challenge = history && findChallenge(history, id);
  if (!history || !challenge) notFound();
  const number = findRevision(history, challenge.revision)?.number ?? 1;
  const [revision, by, at] = await Promise.all([showNumbered(slug, number), actor(), now()]);
  if (!revision) notFound();
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const said = SAID.find((each) => each === query.said);
  const { content, photographs } = revision.view;
  const shown = { slug, history, challenge, by, at };
  return (
    <article className={styles.page}>
      <header className={styles.head}>
        <p>
          <Link href={`/entries/${slug}`}>{content.title}</Link>
        </p>
        <h1>{t("heading", { claim: t(`claims.${challenge.claim}`) })}</h1>
      </header>
      {(said || form.errors.length > 0) && (
        <div className={styles.whole}>
          {said && <Said>{t(`said.${said}`)}</Said>}
          <OtherErrors form={form} shown={SHOWN} />
        </div>
      )}
      <div className={styles.says}>
        <ChallengeSaid challenge={challenge} number={number} />
        <Decision {...shown} form={form} />
        {challenge.decision && <Appeal {...shown} form={form} />}
      </div>
      <div className={styles.photographs}>
        <Viewer title={content.title} photographs={photographs} />
        <details className={challenges.beneath} open={challenge.decision === null}>
          <summary>{t("says", { number })}</summary>
          <div className={styles.says}>
            <EntryWhat view={revision.view} />
            <EntryWhy view={revision.view} />
          </div>
        </details>
      </div>
    </article>
  );
}
