import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { ThreeColumns } from "#ui/contribute/three-columns";
import { actorWhoMay } from "#web/actor";
import { meanwhileOf, ownDraft } from "#web/drafts/reading-drafts";
import styles from "../../../../_ui/contribute/contribute.module.css";
import plain from "../../../../_ui/plain.module.css";

type Props = {
  readonly params: Promise<{ readonly draft: string }>;
  readonly searchParams: Promise<{ readonly choose?: string }>;
};

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("contribute"))("meanwhileTitle"), robots: { index: false } };
}

/** A draft beside the revision that somebody else submitted while it was written. */
export default async function MeanwhilePage({ params, searchParams }: Props) {
  const [{ draft: id }, { choose }, t] = await Promise.all([
    params,
    searchParams,
    getTranslations("contribute"),
  ]);
  await actorWhoMay("write a draft", `/contribute/${id}/meanwhile`);
  const draft = await ownDraft(id);
  if (!draft || draft.submitted) notFound();
  const meanwhile = await meanwhileOf(draft);
  if (!meanwhile) redirect(`/contribute/${id}`);
  const { newest, conflicts } = meanwhile;
  return (
    <>
      <header className={styles.head}>
        <p>
          <Link href={`/contribute/${id}`}>{t("back")}</Link>
        </p>
        <h1>{t("meanwhileTitle")}</h1>
        <p className={plain.lede}>{t("meanwhileLede", { name: newest.createdBy, number: newest.number })}</p>
        {newest.summary !== "" && (
          <>
            <h2>{t("meanwhileSummary")}</h2>
            <p className={styles.quote}>{newest.summary}</p>
          </>
        )}
        {conflicts.length === 0 && <p>{t("meanwhileNoConflict")}</p>}
      </header>
      <ThreeColumns draft={id} conflicts={conflicts} theirs="theirs" incomplete={choose === "1"}>
        <input type="hidden" name="with" value="revision" />
        <input type="hidden" name="newest" value={newest.id} />
        <input type="hidden" name="version" value={draft.version} />
      </ThreeColumns>
    </>
  );
}
