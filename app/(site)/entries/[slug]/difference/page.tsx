import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { CompareForm } from "#ui/revisions/compare-form";
import { EntryDifference } from "#ui/revisions/entry-difference";
import { listRevisions, showRevision } from "#web/drafts/reading-drafts";
import { showEntry } from "#web/reading";
import styles from "../../../../_ui/revisions/revisions.module.css";

type Query = { readonly from?: string; readonly to?: string };
type Props = {
  readonly params: Promise<{ readonly slug: string }>;
  readonly searchParams: Promise<Query>;
};

/** The two numbers that an address asks for; else the newest and the one before. */
async function pairOf(slug: string, { from, to }: Query) {
  const numbers = (await listRevisions(slug)).map(({ number }) => number);
  const newest = numbers.at(-1) ?? 1;
  const asked = to ?? String(newest);
  return { numbers, from: from ?? String(Math.max(1, Number(asked) - 1)), to: asked };
}

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { slug } = await params;
  const [entry, t] = await Promise.all([showEntry(slug), getTranslations("revisions")]);
  const { from, to } = await pairOf(slug, await searchParams);
  return entry ? { title: t("differenceTitle", { title: entry.content.title, from, to }) } : {};
}

/** What changed between any two revisions of an entry. */
export default async function DifferencePage({ params, searchParams }: Props) {
  const [{ slug }, t] = await Promise.all([params, getTranslations("revisions")]);
  const { numbers, from, to } = await pairOf(slug, await searchParams);
  const [entry, before, after] = await Promise.all([
    showEntry(slug),
    showRevision(slug, from),
    showRevision(slug, to),
  ]);
  if (!entry || !before || !after) notFound();
  return (
    <article className={styles.page}>
      <header className={styles.head}>
        <p>
          <Link href={`/entries/${slug}/history`}>{t("all")}</Link>
        </p>
        <h1>{t("differenceTitle", { title: entry.content.title, from, to })}</h1>
        {after.line.summary !== "" && <p className={styles.quote}>{after.line.summary}</p>}
      </header>
      <CompareForm slug={slug} numbers={numbers} from={Number(from)} to={Number(to)} />
      <EntryDifference before={before.view} after={after.view} />
    </article>
  );
}
