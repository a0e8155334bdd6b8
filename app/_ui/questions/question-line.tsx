import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import { questionOf } from "#core/questions/evolve";
import type { KeptQuestion } from "#core/questions/kept-question";
import { Cut } from "../cut.tsx";
import lines from "../entry-line.module.css";
import { QuestionStateSign } from "./question-state.tsx";

type QuestionLineProps = { readonly kept: KeptQuestion; readonly eager: boolean };

/** One question in their list: a large photograph, what is asked, by whom, and how far it has come. */
export function QuestionLine({ kept, eager }: QuestionLineProps) {
  const t = useTranslations("questions");
  const format = useFormatter();
  const question = questionOf(kept.events);
  if (question.state === "unasked") return null;
  const [photograph] = kept.photographs;
  const href = `/questions/${kept.id}`;
  return (
    <article className={`${lines.line} ${lines.large}`}>
      <Link href={href} className={lines.mat} tabIndex={-1} aria-hidden="true">
        {photograph && <Cut image={photograph} alt="" shownAt={480} eager={eager} snug />}
      </Link>
      <div className={lines.words}>
        <div className={lines.name}>
          <h3 className={lines.title}>
            <Link href={href}>{question.title}</Link>
          </h3>
          <p className={lines.state}>
            <QuestionStateSign state={question.state} />
          </p>
        </div>
        <p className={lines.how}>{shortened(question.text)}</p>
        <p className={lines.state}>
          {t("askedBy", {
            name: question.name,
            day: format.dateTime(new Date(question.at), { dateStyle: "long" }),
          })}
        </p>
        <p className={lines.state}>{t("proposals", { count: question.proposals.length })}</p>
      </div>
    </article>
  );
}

/** As much as a list has room for, cut between words. */
function shortened(text: string): string {
  const line = text.replace(/\s+/g, " ");
  return line.length <= 220 ? line : `${line.slice(0, 220).replace(/\s\S*$/, "")} …`;
}
