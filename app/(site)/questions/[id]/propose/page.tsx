import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { slugInAddress } from "#core/questions/parse-proposal";
import { FindEntry } from "#ui/questions/find-entry";
import { ProposeForm } from "#ui/questions/propose-form";
import { QuestionPhotographs } from "#ui/questions/question-photographs";
import { parseEntryQuery, searchEntries, showEntry } from "#web/reading";
import { keptForm, showQuestion } from "#web/reading-questions";
import styles from "../../../../_ui/questions/question.module.css";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

/** Entries shown for the words that were looked for. */
const FOUND = 8;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("questionForm");
  return { title: t("proposeTitle"), robots: { index: false } };
}

export default async function ProposePage({ params, searchParams }: Props) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const [view, t] = await Promise.all([showQuestion(id), getTranslations("questionForm")]);
  if (!view || view.question.state === "withdrawn") notFound();
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const find = String(query.find ?? "").slice(0, 300);
  const pasted = slugInAddress(find);
  const slug = form.typed.entry || (typeof query.entry === "string" ? query.entry : "");
  const [entry, named, found] = await Promise.all([
    slug === "" ? null : showEntry(slug),
    pasted === null ? null : showEntry(pasted),
    find === "" || pasted?.includes("-") ? null : searchEntries(parseEntryQuery({ words: find }).query),
  ]);
  const foundEntries = [...(named ? [named.summary] : []), ...(found?.entries ?? [])];
  const distinct = foundEntries.filter(
    (one, i) => foundEntries.findIndex(({ slug }) => slug === one.slug) === i,
  );
  return (
    <article className={styles.question}>
      <header className={styles.head}>
        <p>
          <Link href={`/questions/${id}`}>{t("backToQuestion")}</Link>
        </p>
        <h1>{t("proposeTitle")}</h1>
        <p>{view.question.title}</p>
      </header>
      <div className={styles.says}>
        {entry ? (
          <>
            <h2>{t("proposeEntry")}</h2>
            <ProposeForm id={id} form={form} entry={entry.summary} />
          </>
        ) : (
          <>
            <h2>{t("inReference")}</h2>
            <FindEntry id={id} find={find} found={find === "" ? null : distinct.slice(0, FOUND)} />
            <h2>{t("inNone")}</h2>
            <ProposeForm id={id} form={form} entry={null} />
          </>
        )}
      </div>
      <div className={styles.photographs}>
        <QuestionPhotographs title={view.question.title} photographs={view.kept.photographs} />
      </div>
    </article>
  );
}
