import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { Agreement } from "#ui/review/agreement";
import { ChallengesWaiting } from "#ui/review/challenges-waiting";
import { ModerationLog } from "#ui/review/moderation-log";
import { actorWhoMay } from "#web/actor";
import { agreement } from "#web/agreement";
import { openChallenges } from "#web/reading-moderation";
import { moderationLog } from "#web/reading-reviews";
import styles from "../../_ui/review/desk.module.css";

/** Acts on one page of the log. */
const PAGE = 50;

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("moderation"))("title"), robots: { index: false } };
}

/** What waits for a moderator, every act of moderation, and how far reviewers agree. */
export default async function ModerationPage({ searchParams }: Props) {
  await actorWhoMay("see the log of moderation", "/moderation");
  const page = Math.min(Math.max(1, Math.floor(Number((await searchParams).page)) || 1), 1000);
  const [waiting, log, fields, t] = await Promise.all([
    openChallenges(),
    moderationLog((page - 1) * PAGE, PAGE + 1),
    agreement(),
    getTranslations("moderation"),
  ]);
  return (
    <div className={styles.desk}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p>
          <Link href="/moderation/members">{t("members")}</Link>
        </p>
      </header>
      <ChallengesWaiting waiting={waiting} />
      <Agreement fields={fields} />
      <section aria-labelledby="log">
        <h2 id="log">{t("log")}</h2>
        <ModerationLog links={log.slice(0, PAGE)} />
        {log.length > PAGE && (
          <p>
            <Link href={`/moderation?page=${page + 1}#log`}>{t("older")}</Link>
          </p>
        )}
      </section>
    </div>
  );
}
