import type { Metadata } from "next";
import { notFound, permanentRedirect } from "next/navigation";
import { EntryAgainst } from "#ui/entry/entry-against";
import { EntryHead } from "#ui/entry/entry-head";
import { EntryRelations } from "#ui/entry/entry-relations";
import { EntrySays } from "#ui/entry/entry-says";
import { EntryState } from "#ui/entry/entry-state";
import { EntryWhat } from "#ui/entry/entry-what";
import { EntryWhy } from "#ui/entry/entry-why";
import { FromQuestion } from "#ui/questions/from-question";
import { EntryReview } from "#ui/review/entry-review";
import { Viewer } from "#ui/viewer/viewer";
import { actor } from "#web/actor";
import { showEntry } from "#web/reading";
import { questionOfEntry } from "#web/reading-questions";
import { showHistory, standsInstead } from "#web/reading-reviews";
import styles from "./entry.module.css";

type Props = { readonly params: Promise<{ readonly slug: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const entry = await showEntry((await params).slug);
  return entry ? { title: entry.content.title } : {};
}

/** Answers in this order: what is it, how sure, why, what speaks against it, who says so. */
export default async function EntryPage({ params }: Props) {
  const { slug } = await params;
  const instead = await standsInstead(slug);
  if (instead !== null) permanentRedirect(`/entries/${instead}`);
  // First, since it may close a review that is over, and with it change what is shown.
  const traced = await showHistory(slug);
  const view = await showEntry(slug);
  if (!view) notFound();
  const question = await questionOfEntry(view.summary.slug);
  return (
    <article className={styles.entry}>
      <EntryHead view={view} />
      <div className={styles.photographs}>
        <Viewer title={view.content.title} photographs={view.photographs} />
      </div>
      <div className={styles.says}>
        <EntryWhat view={view} />
        <div>
          <EntryState view={view} />
          {traced && (
            <EntryReview
              slug={slug}
              history={traced.history}
              by={await actor()}
              at={new Date().toISOString()}
            />
          )}
        </div>
        <EntryWhy view={view} />
        <EntryAgainst view={view} />
        <EntrySays view={view} />
        {question && <FromQuestion id={question.id} />}
      </div>
      <EntryRelations view={view} />
    </article>
  );
}
