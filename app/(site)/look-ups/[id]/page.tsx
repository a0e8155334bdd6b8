import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import type { ReactNode } from "react";
import { knowsSomething, typedOf } from "#core/look-ups/knowledge";
import { type LookUpView, type MarkAnswer, marksOf, viewOfMark } from "#core/look-ups/look-up";
import { AnswerHead } from "#ui/look-up/answer-head";
import { AskWithMore } from "#ui/look-up/ask-with-more";
import { LookUpKeeping } from "#ui/look-up/look-up-keeping";
import { MakersOfMarks } from "#ui/look-up/makers-of-marks";
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
  const answered = found && marksOf(found.view).find(({ noneFits }) => !noneFits);
  const first = answered?.matches[0];
  const title = first ? t("titleNearest", { title: first.entry.title }) : t("titleNone");
  return { title: found ? title : t("title"), robots: { index: false } };
}

export default async function LookUpAnswerPage({ params, searchParams }: Props) {
  const [{ id }, { said, shown }] = await Promise.all([params, searchParams]);
  const [found, t, offered, refusal] = await Promise.all([
    showLookUp(id),
    getTranslations("lookUp"),
    materials(),
    searchParams.then(readRefusal),
  ]);
  if (!found) notFound();
  const { view, mine } = found;
  const publish = <PublishLink lookUp={id} mine={mine} question={await questionOfLookUp(id)} />;
  const marks = marksOf(view);
  const several = marks.length > 1;
  const place = typeof shown === "string" ? Number(shown) : 0;
  return (
    <div className={styles.answer}>
      <div className={styles.head}>
        <AnswerHead view={view} />
        {knowsSomething(view.asked) && <p className={styles.note}>{t("knownNote")}</p>}
      </div>
      {marks.map((each) => (
        <OneMark
          key={each.mark}
          view={view}
          answer={each}
          mine={mine}
          place={place}
          publish={!several && publish}
        >
          {each.mark === 1 && <WhatWasKnown asked={view.asked} />}
          {each.mark === 1 && mine && (
            <AskWithMore
              lookUp={view.id}
              photographs={view.photographs}
              typed={refusal?.typed ?? typedOf(view.asked)}
              error={refusal?.error ?? null}
              materials={offered}
            />
          )}
        </OneMark>
      ))}
      {several && (
        <div className={styles.across}>
          <MakersOfMarks view={view} />
          {publish}
        </div>
      )}
      <LookUpKeeping view={view} mine={mine} said={said} />
    </div>
  );
}

type OneMarkProps = {
  readonly view: LookUpView;
  readonly answer: MarkAnswer;
  readonly mine: boolean;
  readonly place: number;
  /** What can be done when nothing fits; nothing when the page says it once for all marks. */
  readonly publish: ReactNode;
  /** What stands under the photographs of the mark. */
  readonly children: ReactNode;
};

/** One mark of the object: the photographs of it on one side, its ranking on the other. */
async function OneMark({ view, answer, mine, place, publish, children }: OneMarkProps) {
  const t = await getTranslations("several");
  const { mark } = answer;
  const own = viewOfMark(view, answer);
  const several = view.otherMarks.length > 0;
  const suffix = mark === 1 ? "" : `-${mark}`;
  return (
    <>
      {several && <h2 className={styles.across}>{t("mark", { mark })}</h2>}
      <div className={styles.query}>
        <QueryPhotograph view={view} mine={mine} mark={mark} shown={place} />
        {children}
      </div>
      <div className={styles.found}>
        {own.noneFits && (
          <NoneOfThese view={own} mine={mine} first id={`none${suffix}`}>
            {publish}
          </NoneOfThese>
        )}
        <Matches view={own} id={`matches${suffix}`} short={several} />
        {!own.noneFits && !several && (
          <NoneOfThese view={own} mine={mine}>
            {publish}
          </NoneOfThese>
        )}
      </div>
    </>
  );
}
