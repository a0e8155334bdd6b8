import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import { acceptedAnswer } from "#core/questions/decide";
import type { QuestionView } from "#core/questions/question-view";
import styles from "./question.module.css";
import { QuestionStateSign } from "./question-state.tsx";
import { wordTypedPeriod } from "./typed-period.ts";

/** What is asked, where it stands, what was accepted, and who asks. */
export function QuestionHead({ view }: { readonly view: QuestionView }) {
  const t = useTranslations("questions");
  const format = useFormatter();
  const { question, entries } = view;
  if (question.state === "withdrawn") return null;
  return (
    <header className={styles.head}>
      <p>
        <Link href="/questions">{t("toQuestions")}</Link>
      </p>
      <h1>{question.title}</h1>
      <p>
        <QuestionStateSign state={question.state} />
      </p>
      <Accepted view={view} />
      {question.entry && (
        <p>
          {t.rich("madeEntry", {
            title: entries.get(question.entry)?.title ?? question.entry,
            link: (words) => <Link href={`/entries/${question.entry}`}>{words}</Link>,
          })}
        </p>
      )}
      <p>
        {t("askedBy", {
          name: question.name,
          day: format.dateTime(new Date(question.at), { dateStyle: "long" }),
        })}
      </p>
    </header>
  );
}

/** The accepted answer in one line. */
function Accepted({ view }: { readonly view: QuestionView }) {
  const t = useTranslations("questions");
  const periods = useTranslations("period");
  const answer = acceptedAnswer(view.question);
  if (!answer) return null;
  if (answer.kind === "words")
    return (
      <p className={styles.accepted}>
        {t("acceptedWords", {
          words: [answer.mark, answer.maker, wordTypedPeriod(answer.period, periods)]
            .filter((part) => part !== "")
            .join(", "),
        })}
      </p>
    );
  return (
    <p className={styles.accepted}>
      {t.rich("acceptedEntry", {
        title: view.entries.get(answer.entry)?.title ?? answer.entry,
        link: (words) => <Link href={`/entries/${answer.entry}`}>{words}</Link>,
      })}
    </p>
  );
}
