import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { ThreeColumns } from "#ui/contribute/three-columns";
import { actorWhoMay } from "#web/actor";
import { differingFrom, ownDraft } from "#web/drafts/reading-drafts";
import styles from "../../../../_ui/contribute/contribute.module.css";
import plain from "../../../../_ui/plain.module.css";

type Props = {
  readonly params: Promise<{ readonly draft: string }>;
  readonly searchParams: Promise<{ readonly form?: string | string[]; readonly choose?: string }>;
};

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("contribute"))("differingTitle"), robots: { index: false } };
}

/** What was typed in one window, beside what another has saved meanwhile. */
export default async function DifferingPage({ params, searchParams }: Props) {
  const [{ draft: id }, { form, choose }, t] = await Promise.all([
    params,
    searchParams,
    getTranslations("contribute"),
  ]);
  await actorWhoMay("write a draft", `/contribute/${id}`);
  const draft = await ownDraft(id);
  if (!draft || draft.submitted) notFound();
  const differing = differingFrom(draft, form);
  return (
    <>
      <header className={styles.head}>
        <p>
          <Link href={`/contribute/${id}`}>{t("back")}</Link>
        </p>
        <h1>{t("differingTitle")}</h1>
        <p className={plain.lede}>{t(differing ? "differingLede" : "differingGone")}</p>
      </header>
      {differing && (
        <ThreeColumns
          draft={id}
          conflicts={differing.conflicts}
          theirs="theirsSaved"
          incomplete={choose === "1"}
        >
          <input type="hidden" name="with" value="window" />
          <input type="hidden" name="mine" value={differing.mine} />
          <input type="hidden" name="base" value={differing.base} />
          <input type="hidden" name="version" value={draft.version} />
        </ThreeColumns>
      )}
    </>
  );
}
