import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { type LookUpView, type MarkAnswer, marksOf, nearestAsked } from "#core/look-ups/look-up";
import { CompareHead } from "#ui/compare/compare-head";
import { type AskedToCompare, Comparison } from "#ui/compare/comparison";
import { showEntry, showLookUp } from "#web/reading";
import styles from "./compare-page.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string; readonly slug: string }>;
  readonly searchParams: Promise<{
    readonly photograph?: string | string[];
    readonly asked?: string | string[];
  }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [t, entry] = await Promise.all([getTranslations("comparePage"), showEntry((await params).slug)]);
  return entry ? { title: t("title", { title: entry.content.title }), robots: { index: false } } : {};
}

export default async function ComparePage({ params, searchParams }: Props) {
  const { id, slug } = await params;
  const { photograph, asked } = await searchParams;
  const [found, entry, t] = await Promise.all([
    showLookUp(id),
    showEntry(slug),
    getTranslations("comparePage"),
  ]);
  if (!found || !entry) notFound();
  const shown = shownBeside(found.view, slug, Number(asked ?? 0));
  const { match } = shown;
  const own = match?.seen.find((each) => each.photograph === shown.asked[shown.start]?.place);
  const wanted = photograph ?? own?.reference ?? match?.photograph?.id;
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
          asked={shown.asked}
          startAsked={shown.start}
          photographs={entry.photographs}
          start={Math.max(0, start)}
          title={entry.content.title}
        />
      ) : (
        <p>{t("noPhotograph")}</p>
      )}
    </div>
  );
}

/** The photographs of the mark that is compared: that of the one asked for, else the first that lists the entry. */
function shownBeside(view: LookUpView, slug: string, place: number) {
  const wanted = view.photographs[place - 1];
  const answers = marksOf(view);
  const listed = (answer: MarkAnswer | undefined) => answer?.matches.find(({ entry }) => entry.slug === slug);
  const answer = wanted ? answers.find(({ mark }) => mark === wanted.mark) : answers.find(listed);
  const match = listed(answer) ?? null;
  const asked = view.photographs.flatMap((image, i): AskedToCompare[] => {
    if (image.mark !== (answer?.mark ?? 1)) return [];
    const seen = match?.seen.find((each) => each.photograph === i + 1);
    return [{ place: i + 1, image, turn: seen?.turn ?? 0 }];
  });
  const nearest = place || (match ? nearestAsked(match) : 1);
  const start = Math.max(
    0,
    asked.findIndex((each) => each.place === nearest),
  );
  return { match, asked, start };
}
