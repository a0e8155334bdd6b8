import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { WhatWasKnown } from "#ui/look-up/what-was-known";
import { AskersPart } from "#ui/questions/askers-part";
import { OtherErrors } from "#ui/questions/form-field";
import { QuestionHistory } from "#ui/questions/history";
import { Proposals } from "#ui/questions/proposals";
import { QuestionHead } from "#ui/questions/question-head";
import { QuestionPhotographs } from "#ui/questions/question-photographs";
import { Said } from "#ui/said";
import { keptForm, privateAddress, showQuestion } from "#web/reading-questions";
import plain from "../../../_ui/plain.module.css";
import styles from "../../../_ui/questions/question.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const SAID = ["propose", "accept", "take-back", "decline", "enter", "known"] as const;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [found, t] = await Promise.all([showQuestion((await params).id), getTranslations("questions")]);
  if (!found) return {};
  const hidden = found.question.state === "withdrawn";
  return hidden ? { title: t("withdrawnTitle"), robots: { index: false } } : { title: found.question.title };
}

/** What is asked, with its photographs; what others take it for; and everything that happened. */
export default async function QuestionPage({ params, searchParams }: Props) {
  const [{ id }, { said, form: name }] = await Promise.all([params, searchParams]);
  const [view, t] = await Promise.all([showQuestion(id), getTranslations("questions")]);
  if (!view) notFound();
  const { question, kept } = view;
  if (question.state === "withdrawn")
    return (
      <div className={styles.whole}>
        <h1>{t("withdrawnTitle")}</h1>
        <p>{t("withdrawnWords")}</p>
        <p>
          <Link href="/questions">{t("toQuestions")}</Link>
        </p>
      </div>
    );
  const form = keptForm(name) ?? { typed: {}, errors: [] };
  const words = SAID.find((each) => each === said);
  return (
    <article className={styles.question}>
      <QuestionHead view={view} />
      {(words || form.errors.length > 0) && (
        <div className={styles.whole}>
          {words && <Said>{t(`said.${words}`)}</Said>}
          <OtherErrors form={form} shown={["reason"]} />
        </div>
      )}
      <div className={styles.photographs}>
        <QuestionPhotographs title={question.title} photographs={kept.photographs} />
      </div>
      <div className={styles.says}>
        <h2>{t("known")}</h2>
        <p className={styles.said}>{question.text}</p>
        <WhatWasKnown asked={kept.asked} />
        <p>
          <Link href={`/questions/${id}/propose`} className={plain.button}>
            {t("propose")}
          </Link>
        </p>
      </div>
      <section className={styles.whole} aria-labelledby="proposals">
        <h2 id="proposals">{t("proposalsHeading", { count: question.proposals.length })}</h2>
        <Proposals view={view} form={form} />
      </section>
      {view.mine && (
        <div className={styles.whole}>
          <AskersPart view={view} address={said === "published" ? await privateAddress(id) : null} />
        </div>
      )}
      <div className={styles.whole}>
        <QuestionHistory view={view} />
      </div>
    </article>
  );
}
