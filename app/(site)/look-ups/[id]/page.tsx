import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { knowsSomething, typedOf } from "#core/look-ups/knowledge";
import { AskWithMore } from "#ui/look-up/ask-with-more";
import { LookUpKeeping } from "#ui/look-up/look-up-keeping";
import { Matches } from "#ui/look-up/matches";
import { NoneOfThese } from "#ui/look-up/none-of-these";
import { QueryPhotograph } from "#ui/look-up/query-photograph";
import { WhatWasKnown } from "#ui/look-up/what-was-known";
import { materials, readRefusal, showLookUp } from "#web/reading";
import styles from "./look-up.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("lookUp");
  return { title: t("title"), robots: { index: false } };
}

export default async function LookUpAnswerPage({ params, searchParams }: Props) {
  const { id } = await params;
  const [found, t, offered, refusal] = await Promise.all([
    showLookUp(id),
    getTranslations("lookUp"),
    materials(),
    searchParams.then(readRefusal),
  ]);
  if (!found) notFound();
  const { view, mine } = found;
  return (
    <div className={styles.answer}>
      <div className={styles.head}>
        <h1>{view.noneFits ? t("noneFits") : t("nearest")}</h1>
        <p className={styles.note}>{view.noneFits ? t("noneFitsNote") : t("likenessNote")}</p>
        {knowsSomething(view.asked) && <p className={styles.note}>{t("knownNote")}</p>}
      </div>
      <div className={styles.query}>
        <QueryPhotograph view={view} mine={mine} />
        <WhatWasKnown asked={view.asked} />
        {mine && (
          <AskWithMore
            lookUp={view.id}
            image={view.query}
            typed={refusal?.typed ?? typedOf(view.asked)}
            error={refusal?.error ?? null}
            materials={offered}
          />
        )}
      </div>
      <div className={styles.found}>
        {view.noneFits && <NoneOfThese mine={mine} id={view.id} first />}
        <Matches view={view} />
        {!view.noneFits && <NoneOfThese mine={mine} id={view.id} />}
      </div>
      <LookUpKeeping view={view} mine={mine} />
    </div>
  );
}
