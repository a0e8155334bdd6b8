import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { OtherErrors } from "#ui/questions/form-field";
import { ModeratorTools } from "#ui/review/moderator-tools";
import { Said } from "#ui/said";
import { actorWhoMay } from "#web/actor";
import { showEntry } from "#web/reading";
import { keptForm, makeToken } from "#web/reading-desk";
import { showHistory } from "#web/reading-reviews";
import styles from "../../../../_ui/review/desk.module.css";

type Props = {
  readonly params: Promise<{ readonly slug: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const SAID = ["hide", "merge", "lock", "undo"] as const;

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("moderate"))("title"), robots: { index: false } };
}

/** What moderators do to one entry: hide, merge, lock, and take back what another moderator did. */
export default async function ModeratePage({ params, searchParams }: Props) {
  const [{ slug }, query, t] = await Promise.all([params, searchParams, getTranslations("moderate")]);
  const by = await actorWhoMay("hide content", `/entries/${slug}/moderate`);
  const traced = await showHistory(slug);
  const entry = await showEntry(slug);
  if (!traced || !entry) notFound();
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const said = SAID.find((each) => each === query.said);
  return (
    <article className={styles.desk}>
      <header className={styles.head}>
        <p>
          <Link href={`/entries/${slug}`}>{entry.content.title}</Link>
        </p>
        <h1>{t("title")}</h1>
        <p>{t("lede")}</p>
      </header>
      {said && <Said>{t(`said.${said}`)}</Said>}
      <OtherErrors form={form} shown={["reason", "into"]} />
      <ModeratorTools
        view={entry}
        history={traced.history}
        by={by.id}
        form={form}
        token={await makeToken()}
      />
    </article>
  );
}
