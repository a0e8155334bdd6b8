import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { EntryBody } from "#ui/entry/entry-body";
import { FieldErrorNote } from "#ui/field-error";
import { NearestEntries } from "#ui/review/nearest-entries";
import { actorWhoMay } from "#web/actor";
import { alikeOf, ownDraft, previewOf, read } from "#web/drafts/reading-drafts";
import styles from "../../../../_ui/contribute/contribute.module.css";
import plain from "../../../../_ui/plain.module.css";

type Props = { readonly params: Promise<{ readonly draft: string }> };

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("contribute"))("previewTitle"), robots: { index: false } };
}

/** A draft as the entry's page would show it, what keeps it from being submitted, and whether it is here already. */
export default async function PreviewPage({ params }: Props) {
  const [{ draft: id }, t] = await Promise.all([params, getTranslations("contribute")]);
  const member = await actorWhoMay("write a draft", `/contribute/${id}/preview`);
  const draft = await ownDraft(id);
  if (!draft || draft.submitted) notFound();
  const [view, alike] = await Promise.all([previewOf(draft, member.name), alikeOf(draft)]);
  const { errors } = read(draft);
  return (
    <>
      <header className={styles.head}>
        <p>
          <Link href={`/contribute/${id}`}>{t("back")}</Link>
        </p>
        <p className={plain.lede}>{t("previewLede")}</p>
        {errors.length > 0 && (
          <div className={styles.lacking}>
            <h2>{t("previewErrors", { count: errors.length })}</h2>
            {errors.map((error) => (
              <FieldErrorNote key={`${error.field} ${error.rule}`} error={error} />
            ))}
          </div>
        )}
      </header>
      <div className={styles.list}>
        <EntryBody view={view} isDraft />
        {alike.length > 0 && <NearestEntries nearest={alike} />}
      </div>
    </>
  );
}
