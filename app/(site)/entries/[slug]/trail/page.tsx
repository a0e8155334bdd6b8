import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { TrailStory } from "#ui/review/trail-story";
import { showEntry } from "#web/reading";
import { trailOfEntry } from "#web/reading-reviews";
import plain from "../../../../_ui/plain.module.css";
import styles from "../../../../_ui/review/trail.module.css";

type Props = { readonly params: Promise<{ readonly slug: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [entry, t] = await Promise.all([showEntry((await params).slug), getTranslations("trail")]);
  return entry ? { title: t("title", { title: entry.content.title }) } : {};
}

/** Everything that ever happened to an entry, told in sentences, and the trail to take away and check. */
export default async function TrailPage({ params }: Props) {
  const { slug } = await params;
  const [entry, links, t] = await Promise.all([
    showEntry(slug),
    trailOfEntry(slug),
    getTranslations("trail"),
  ]);
  if (!entry || !links) notFound();
  return (
    <article className={styles.trail}>
      <header className={styles.head}>
        <p>
          <Link href={`/entries/${slug}`}>{t("toEntry")}</Link>
        </p>
        <h1>{t("title", { title: entry.content.title })}</h1>
        <p className={plain.lede}>{t("lede")}</p>
      </header>
      <TrailStory slug={slug} links={links} />
      <p className={plain.note}>{t("downloadNote")}</p>
      <p>
        <a href={`/entries/${slug}/trail.json`} download={`${slug}-trail.json`} className={plain.quiet}>
          {t("download")}
        </a>
      </p>
    </article>
  );
}
