import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { questionOf } from "#core/questions/evolve";
import type { KeptQuestion } from "#core/questions/kept-question";
import { QuestionLine } from "#ui/questions/question-line";
import { listQuestions } from "#web/reading-questions";
import plain from "../../_ui/plain.module.css";
import styles from "../../_ui/questions/question.module.css";

type Props = { readonly searchParams: Promise<{ readonly page?: string | string[] }> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("questions");
  return { title: t("title") };
}

export default async function QuestionsPage({ searchParams }: Props) {
  const asked = Number((await searchParams).page ?? 1);
  const page = Number.isInteger(asked) && asked >= 1 && asked <= 10_000 ? asked : 1;
  const [{ questions, more }, t] = await Promise.all([listQuestions(page), getTranslations("questions")]);
  const open = questions.filter(({ events }) => questionOf(events).state === "open");
  const answered = questions.filter(({ events }) => questionOf(events).state === "answered");
  return (
    <>
      <h1>{t("title")}</h1>
      <p className={`${plain.lede} ${styles.lede}`}>{t("lede")}</p>
      {questions.length === 0 ? (
        <div className={styles.empty}>
          <p>{page === 1 ? t("empty") : t("noMore")}</p>
          <p>
            <Link href={page === 1 ? "/" : "/questions"} className={plain.button}>
              {page === 1 ? t("emptyLookUp") : t("first")}
            </Link>
          </p>
        </div>
      ) : (
        <div className={styles.list}>
          <Part id="open" heading={t("open")} questions={open} eager />
          <Part id="answered" heading={t("answered")} questions={answered} eager={open.length === 0} />
        </div>
      )}
      {(page > 1 || more) && questions.length > 0 && (
        <nav className={styles.more} aria-label={t("pages")}>
          {page > 1 ? <Link href={`/questions?page=${page - 1}`}>{t("newer")}</Link> : <span />}
          {more && <Link href={`/questions?page=${page + 1}`}>{t("older")}</Link>}
        </nav>
      )}
    </>
  );
}

type PartProps = {
  readonly id: string;
  readonly heading: string;
  readonly questions: readonly KeptQuestion[];
  readonly eager: boolean;
};

function Part({ id, heading, questions, eager }: PartProps) {
  if (questions.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{heading}</h2>
      <ol>
        {questions.map((kept, i) => (
          <li key={kept.id}>
            <QuestionLine kept={kept} eager={eager && i < 2} />
          </li>
        ))}
      </ol>
    </section>
  );
}
