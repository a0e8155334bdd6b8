import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { marksOf } from "#core/look-ups/look-up";
import { QueryPhotograph } from "#ui/look-up/query-photograph";
import { WhatWasKnown } from "#ui/look-up/what-was-known";
import { PublishForm } from "#ui/questions/publish-form";
import { showLookUp } from "#web/reading";
import { keptForm, questionOfLookUp } from "#web/reading-questions";
import styles from "../../../../_ui/questions/question.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly form?: string | string[] }>;
};

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("questionForm");
  return { title: t("publishTitle"), robots: { index: false } };
}

/** Where the owner of a look-up publishes it; nobody else is shown it. */
export default async function PublishPage({ params, searchParams }: Props) {
  const [{ id }, { form: name }] = await Promise.all([params, searchParams]);
  const [found, t] = await Promise.all([showLookUp(id), getTranslations("questionForm")]);
  if (!found?.mine) notFound();
  const question = await questionOfLookUp(id);
  if (question !== null) redirect(`/questions/${question}`);
  return (
    <article className={styles.question}>
      <header className={styles.head}>
        <p>
          <Link href={`/look-ups/${id}`}>{t("backToAnswer")}</Link>
        </p>
        <h1>{t("publishTitle")}</h1>
        <p>{t("publishLede")}</p>
      </header>
      <div className={styles.says}>
        <PublishForm lookUp={id} form={keptForm(name) ?? { typed: { licence: "CC BY 4.0" }, errors: [] }} />
      </div>
      <div className={styles.photographs}>
        {marksOf(found.view).map(({ mark }) => (
          <QueryPhotograph key={mark} view={found.view} mine mark={mark} shown={0} />
        ))}
        <WhatWasKnown asked={found.view.asked} />
      </div>
    </article>
  );
}
