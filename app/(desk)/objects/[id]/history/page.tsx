import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { differenceOfFiles } from "#core/object-files/difference-of-files";
import { emptyFile } from "#core/object-files/object-file";
import { FileChanges } from "#ui/objects/file-changes";
import { FileFrame } from "#ui/objects/file-frame";
import { VersionList } from "#ui/objects/version-list";
import { contentOfVersion, fileForPage, historyOfFile, keptForm } from "#web/object-files/reading";
import styles from "../../../../_ui/objects/objects.module.css";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.history"), robots: { index: false } };
}

/** Every version of the file, and what one of them changed. */
export default async function HistoryPage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const [{ kept, access, isStranger }, t] = await Promise.all([
    fileForPage(id, "history"),
    getTranslations("objectPages"),
  ]);
  // What was taken out of a published file is for those who may see more than it says now.
  if (isStranger) notFound();
  const number = query.version === undefined ? kept.version : Number(query.version);
  const [{ versions }, after] = await Promise.all([historyOfFile(id), contentOfVersion(id, number)]);
  if (!after) notFound();
  const before = (await contentOfVersion(id, number - 1)) ?? { ...emptyFile("", after.family) };
  return (
    <FileFrame {...{ kept, access, isStranger }} part="history" said={query.said} form={keptForm(query.form)}>
      <div className={styles.two}>
        <section className={styles.section} aria-labelledby="changed">
          <h2 id="changed">{t("history.changed", { number })}</h2>
          <FileChanges changes={differenceOfFiles(before, after)} contents={[before, after]} />
        </section>
        <section className={styles.section} aria-labelledby="versions">
          <h2 id="versions">{t("history.versions")}</h2>
          <VersionList file={id} versions={versions} shown={number} mayChange={access !== "view"} />
        </section>
      </div>
    </FileFrame>
  );
}
