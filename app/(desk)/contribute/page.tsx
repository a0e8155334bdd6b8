import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { DraftLine } from "#ui/contribute/draft-line";
import { OtherErrors } from "#ui/questions/form-field";
import { Said } from "#ui/said";
import { actorWhoMay } from "#web/actor";
import { keptForm, type DraftLine as Line, listDrafts } from "#web/drafts/reading-drafts";
import styles from "../../_ui/contribute/contribute.module.css";
import plain from "../../_ui/plain.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("contribute"))("title"), robots: { index: false } };
}

/** What a member is writing, and what became of what they submitted. */
export default async function ContributePage({ searchParams }: Props) {
  await actorWhoMay("write a draft", "/contribute");
  const [{ said, form }, lines, t] = await Promise.all([
    searchParams,
    listDrafts(),
    getTranslations("contribute"),
  ]);
  const kept = keptForm(form);
  const drafts = (lines ?? []).filter(({ draft }) => draft.submitted === null);
  const submitted = (lines ?? []).filter(({ draft }) => draft.submitted !== null);
  return (
    <>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p className={plain.lede}>{t("lede")}</p>
        {said === "discarded" && <Said>{t("said.discarded")}</Said>}
        {kept && <OtherErrors form={kept} shown={[]} />}
        <form method="post" action="/api/drafts">
          <button type="submit" className={plain.button}>
            {t("new")}
          </button>
        </form>
        <p className={plain.note}>{t("reviseHow")}</p>
      </header>
      <div className={styles.list}>
        <Part id="drafts" heading={t("drafts")} none={t("noDrafts")} lines={drafts} />
        <Part id="submitted" heading={t("submitted")} none={t("noSubmitted")} lines={submitted} />
      </div>
    </>
  );
}

type PartProps = {
  readonly id: string;
  readonly heading: string;
  readonly none: string;
  readonly lines: readonly Line[];
};

function Part({ id, heading, none, lines }: PartProps) {
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{heading}</h2>
      {lines.length === 0 && <p>{none}</p>}
      <ul>
        {lines.map(({ draft, entry }) => (
          <li key={draft.id}>
            <DraftLine draft={draft} entry={entry} />
          </li>
        ))}
      </ul>
    </section>
  );
}
