import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { FileReport } from "#ui/objects/file-report";
import { datedOf, fileForPage } from "#web/object-files/reading";
import { reportForPage } from "#web/object-files/report-source";
import { addressOfHost } from "#web/origin";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";
import { reportWords } from "../../../../_ui/objects/report-words.ts";

type Props = Pick<ObjectPageProps, "params">;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [{ kept }, t] = await Promise.all([
    fileForPage((await params).id, "report"),
    getTranslations("objectReport.page"),
  ]);
  return { title: t("title", { title: kept.content.title }), robots: { index: kept.publishedAt !== null } };
}

/** The report on an object, ready to be printed. */
export default async function ReportPage({ params }: Props) {
  const { id } = await params;
  const found = await fileForPage(id, "report");
  const { source, isWaiting } = await reportForPage(found, await addressOfHost());
  const { report } = await reportWords(source);
  const dated = datedOf(found.kept.content, found.entries);
  return (
    <FileReport
      {...{ report: report(), isWaiting, ...dated }}
      content={found.kept.content}
      base={`/objects/${id}`}
      images="/images"
    />
  );
}
