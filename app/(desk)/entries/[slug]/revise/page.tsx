import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { revisionState } from "#core/review/standing";
import { actorWhoMay } from "#web/actor";
import { listRevisions, openDraftOf, showRevision } from "#web/drafts/reading-drafts";
import { showEntry } from "#web/reading";
import { showHistory } from "#web/reading-reviews";
import styles from "../../../../_ui/contribute/contribute.module.css";
import plain from "../../../../_ui/plain.module.css";

type Props = {
  readonly params: Promise<{ readonly slug: string }>;
  readonly searchParams: Promise<{ readonly from?: string }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [entry, t] = await Promise.all([showEntry((await params).slug), getTranslations("contribute")]);
  return entry ? { title: t("reviseTitle", { title: entry.content.title }), robots: { index: false } } : {};
}

/** Begins a draft of an entry's next revision: from what waits for its review, else from the one shown, or from any other. */
export default async function RevisePage({ params, searchParams }: Props) {
  const [{ slug }, { from }, t] = await Promise.all([params, searchParams, getTranslations("contribute")]);
  const entry = await showEntry(slug);
  const [traced, all] = await Promise.all([showHistory(slug), listRevisions(slug)]);
  const newest = all.at(-1);
  if (!entry || !traced || !newest) notFound();
  const shown = entry.revision.number;
  // What waits for its review is gone on with; what a review did not accept is not.
  const goesOn = revisionState(traced.history, newest.id) === "under review";
  const revision = await showRevision(slug, from ?? String(goesOn ? newest.number : shown));
  if (!revision) notFound();
  await actorWhoMay("write a draft", `/entries/${slug}/revise${from ? `?from=${from}` : ""}`);
  const open = await openDraftOf(slug);
  const isOld = newest.number !== revision.line.number;
  return (
    <header className={styles.head}>
      <p>
        <Link href={`/entries/${slug}`}>{entry.content.title}</Link>
      </p>
      <h1>{t("reviseTitle", { title: entry.content.title })}</h1>
      <p className={plain.lede}>{t("reviseLede", { number: revision.line.number })}</p>
      {isOld && <p>{t("reviseOld", { number: revision.line.number })}</p>}
      {from === undefined && revision.line.number !== shown && (
        <p>
          {t.rich("reviseShown", {
            number: shown,
            link: (words) => <Link href={`/entries/${slug}/revise?from=${shown}`}>{words}</Link>,
          })}
        </p>
      )}
      {open && (
        <p>
          {t("openDraft")} <Link href={`/contribute/${open.id}`}>{t("goOn")}</Link>
        </p>
      )}
      <form method="post" action="/api/drafts" encType="multipart/form-data">
        <input type="hidden" name="entry" value={slug} />
        <input type="hidden" name="from" value={revision.line.number} />
        <button type="submit" className={plain.button}>
          {t("reviseBegin")}
        </button>
      </form>
    </header>
  );
}
