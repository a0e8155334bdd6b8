import type { Metadata } from "next";
import { notFound, permanentRedirect } from "next/navigation";
import { EntryBody } from "#ui/entry/entry-body";
import { FoundOn } from "#ui/objects/found-on";
import { FromQuestion } from "#ui/questions/from-question";
import { EntryReview } from "#ui/review/entry-review";
import { actor } from "#web/actor";
import { publishedFiles } from "#web/object-files/reading";
import { showEntry } from "#web/reading";
import { questionOfEntry } from "#web/reading-questions";
import { showHistory, standsInstead } from "#web/reading-reviews";

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
  const by = await actor();
  const at = new Date().toISOString();
  return (
    <EntryBody
      view={view}
      review={traced && <EntryReview slug={slug} history={traced.history} by={by} at={at} />}
      after={
        <>
          {question && <FromQuestion id={question.id} />}
          <FoundOn lines={await publishedFiles(view.summary.slug)} />
        </>
      }
    />
  );
}
