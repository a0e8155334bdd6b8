import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { revisionState } from "#core/review/standing";
import { TrailStory } from "#ui/review/trail-story";
import { CompareForm } from "#ui/revisions/compare-form";
import { RevisionList } from "#ui/revisions/revision-list";
import { listRevisions } from "#web/drafts/reading-drafts";
import { showEntry } from "#web/reading";
import { showHistory, trailOfEntry } from "#web/reading-reviews";
import plain from "../../../../_ui/plain.module.css";
import styles from "../../../../_ui/revisions/revisions.module.css";

type Props = { readonly params: Promise<{ readonly slug: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [entry, t] = await Promise.all([showEntry((await params).slug), getTranslations("revisions")]);
  return entry ? { title: t("historyTitle", { title: entry.content.title }) } : {};
}

/** All revisions of an entry, and everything that happened to it. */
export default async function HistoryPage({ params }: Props) {
  const [{ slug }, t] = await Promise.all([params, getTranslations("revisions")]);
  const traced = await showHistory(slug);
  const [entry, lines, links] = await Promise.all([showEntry(slug), listRevisions(slug), trailOfEntry(slug)]);
  if (!traced || !entry) notFound();
  const revisions = lines.map((line) => ({ ...line, state: revisionState(traced.history, line.id) }));
  const numbers = lines.map(({ number }) => number);
  const newest = numbers.at(-1) ?? 1;
  return (
    <article className={styles.page}>
      <header className={styles.head}>
        <p>
          <Link href={`/entries/${slug}`}>{t("toEntry")}</Link>
        </p>
        <h1>{t("historyTitle", { title: entry.content.title })}</h1>
        <p className={plain.lede}>{t("historyLede")}</p>
      </header>
      {newest > 1 && <CompareForm slug={slug} numbers={numbers} from={newest - 1} to={newest} />}
      <RevisionList slug={slug} revisions={revisions} shown={entry.revision.number} />
      {links && (
        <section aria-labelledby="story">
          <h2 id="story">{t("story")}</h2>
          <TrailStory slug={slug} links={links} />
        </section>
      )}
    </article>
  );
}
