import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { whyNoEntry } from "#core/questions/decide";
import { parseEntry } from "#core/questions/parse-entry";
import { prefillEntry } from "#core/questions/prefill-entry";
import { EntryForm } from "#ui/questions/entry-form";
import { QuestionPhotographs } from "#ui/questions/question-photographs";
import { listMakers, materials } from "#web/reading";
import { keptForm, showQuestion } from "#web/reading-questions";
import styles from "../../../../_ui/questions/question.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly form?: string | string[] }>;
};

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("questionForm");
  return { title: t("enterTitle"), robots: { index: false } };
}

/** Where the asker makes an entry of a question; nobody else is shown it. */
export default async function EnterQuestionPage({ params, searchParams }: Props) {
  const [{ id }, { form: name }] = await Promise.all([params, searchParams]);
  const [view, t] = await Promise.all([showQuestion(id), getTranslations("questionForm")]);
  if (!view?.mine || whyNoEntry(view.question)) notFound();
  const [makers, offered] = await Promise.all([listMakers(""), materials()]);
  const { question, kept } = view;
  const [terms = { licence: "", credit: "" }] = kept.photographs;
  const known = keptForm(name);
  const { licence, credit } = terms;
  const form = known ?? { typed: prefillEntry(question, kept.asked, { licence, credit }), errors: [] };
  const read = known && known.errors.length === 0 ? parseEntry(known.typed) : null;
  return (
    <article className={styles.question}>
      <header className={styles.head}>
        <p>
          <Link href={`/questions/${id}`}>{t("backToQuestion")}</Link>
        </p>
        <h1>{t("enterTitle")}</h1>
        <p>{t("enterLede")}</p>
      </header>
      <div className={styles.says}>
        <EntryForm
          id={id}
          form={form}
          makers={makers}
          materials={offered}
          understood={read?.ok ? read.value : null}
        />
      </div>
      <div className={styles.photographs}>
        <QuestionPhotographs title={question.title} photographs={kept.photographs} />
      </div>
    </article>
  );
}
