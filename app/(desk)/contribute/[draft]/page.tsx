import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { DraftForm } from "#ui/contribute/draft-form";
import { Said } from "#ui/said";
import { actorWhoMay } from "#web/actor";
import { keptForm, ownDraft, read, startsEarlier, typedAgain } from "#web/drafts/reading-drafts";
import { listMakers, materials, showEntry } from "#web/reading";
import styles from "../../../_ui/contribute/contribute.module.css";
import plain from "../../../_ui/plain.module.css";

type Props = {
  readonly params: Promise<{ readonly draft: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

const SAID = ["saved", "removed", "moved", "settled"] as const;

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("contribute"))("title"), robots: { index: false } };
}

/** Where a draft is written. Nobody but its owner finds it. */
export default async function DraftPage({ params, searchParams }: Props) {
  const [{ draft: id }, query, t] = await Promise.all([params, searchParams, getTranslations("contribute")]);
  await actorWhoMay("write a draft", `/contribute/${id}`);
  const draft = await ownDraft(id);
  if (!draft) notFound();
  if (draft.submitted) redirect(`/entries/${draft.submitted.slug}/revisions/${draft.submitted.number}`);
  const [makers, offered, entry, earlier] = await Promise.all([
    listMakers(""),
    materials(),
    draft.entry === null ? null : showEntry(draft.entry),
    startsEarlier(draft),
  ]);
  const kept = keptForm(query.form);
  const said = SAID.find((each) => each === query.said);
  return (
    <>
      <header className={styles.head}>
        <p>
          <Link href="/contribute">{t("title")}</Link>
        </p>
        <h1>
          {draft.entry === null
            ? t("newTitle")
            : t("changeTitle", { title: entry?.content.title ?? draft.entry })}
        </h1>
        <p className={plain.lede}>{t("formLede")}</p>
        {earlier && <p>{t("basedOn")}</p>}
        {said && <Said>{t(`said.${said}`)}</Said>}
      </header>
      <DraftForm
        draft={draft}
        form={{ typed: typedAgain(draft, kept), errors: kept?.errors ?? [] }}
        read={read(draft)}
        makers={makers}
        materials={offered}
        settled={said === "settled"}
      />
    </>
  );
}
