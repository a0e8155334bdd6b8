import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { knowsSomething, typedOf } from "#core/look-ups/knowledge";
import { AnswerHead } from "#ui/look-up/answer-head";
import { AskWithMore } from "#ui/look-up/ask-with-more";
import { LookUpKeeping } from "#ui/look-up/look-up-keeping";
import { Matches } from "#ui/look-up/matches";
import { NoneOfThese } from "#ui/look-up/none-of-these";
import { QueryPhotograph } from "#ui/look-up/query-photograph";
import { WhatWasKnown } from "#ui/look-up/what-was-known";
import { PublishLink } from "#ui/questions/publish-link";
import { materials, readRefusal, showLookUp } from "#web/reading";
import { questionOfLookUp } from "#web/reading-questions";
import styles from "./look-up.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [found, t] = await Promise.all([showLookUp((await params).id), getTranslations("lookUp")]);
  const first = found?.view.noneFits ? undefined : found?.view.matches[0];
  const title = first ? t("titleNearest", { title: first.entry.title }) : t("titleNone");
  return { title: found ? title : t("title"), robots: { index: false } };
}

export default async function LookUpAnswerPage({ params, searchParams }: Props) {
  const [{ id }, { said }] = await Promise.all([params, searchParams]);
  const [found, t, offered, refusal] = await Promise.all([
    showLookUp(id),
    getTranslations("lookUp"),
    materials(),
    searchParams.then(readRefusal),
  ]);
  if (!found) notFound();
  const { view, mine } = found;
  const publish = <PublishLink lookUp={id} mine={mine} question={await questionOfLookUp(id)} />;
  return (
    <div className={styles.answer}>
      <div className={styles.head}>
        <AnswerHead view={view} />
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
        {view.noneFits && (
          <NoneOfThese view={view} mine={mine} first>
            {publish}
          </NoneOfThese>
        )}
        <Matches view={view} />
        {!view.noneFits && (
          <NoneOfThese view={view} mine={mine}>
            {publish}
          </NoneOfThese>
        )}
      </div>
      <LookUpKeeping view={view} mine={mine} said={said} />
    </div>
  );
}
