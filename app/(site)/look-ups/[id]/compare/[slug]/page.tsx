import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { CompareHead } from "#ui/compare/compare-head";
import { Comparison } from "#ui/compare/comparison";
import { showEntry, showLookUp } from "#web/reading";
import styles from "./compare-page.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string; readonly slug: string }>;
  readonly searchParams: Promise<{ readonly photograph?: string | string[] }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [t, entry] = await Promise.all([getTranslations("comparePage"), showEntry((await params).slug)]);
  return entry ? { title: t("title", { title: entry.content.title }), robots: { index: false } } : {};
}

export default async function ComparePage({ params, searchParams }: Props) {
  const { id, slug } = await params;
  const { photograph } = await searchParams;
  const [found, entry, t] = await Promise.all([
    showLookUp(id),
    showEntry(slug),
    getTranslations("comparePage"),
  ]);
  if (!found || !entry) notFound();
  const match = found.view.matches.find((each) => each.entry.slug === slug) ?? null;
  const wanted = photograph ?? match?.photograph?.id;
  const start = entry.photographs.findIndex(({ id: each }) => each === wanted);
  return (
    <div className={styles.compare}>
      <p>
        <Link href={`/look-ups/${id}`}>{t("back")}</Link>
      </p>
      <CompareHead entry={entry.summary} match={match} model={found.view.model} />
      {entry.photographs.length > 0 ? (
        <Comparison
          lookUp={id}
          entry={slug}
          query={found.view.query}
          photographs={entry.photographs}
          start={Math.max(0, start)}
          title={entry.content.title}
          turn={match?.turn ?? 0}
        />
      ) : (
        <p>{t("noPhotograph")}</p>
      )}
    </div>
  );
}
