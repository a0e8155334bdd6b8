import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { FileReport } from "#ui/objects/file-report";
import { datedOf, sharedFile } from "#web/object-files/reading";
import { reportForPage } from "#web/object-files/report-source";
import { addressOfHost } from "#web/origin";
import { reportWords } from "../../../../_ui/objects/report-words.ts";

type Props = { readonly params: Promise<{ readonly token: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const [found, t] = await Promise.all([
    sharedFile((await params).token),
    getTranslations("objectReport.page"),
  ]);
  const title = found ? t("title", { title: found.kept.content.title }) : "";
  // The address is the key: no other site is told of it.
  return { title, robots: { index: false }, referrer: "no-referrer" };
}

/** The report on an object, for who has the link to its file. */
export default async function SharedReportPage({ params }: Props) {
  const { token } = await params;
  const found = await sharedFile(token);
  if (!found) notFound();
  const { source, isWaiting } = await reportForPage(found, await addressOfHost());
  const { report } = await reportWords(source);
  const dated = datedOf(found.kept.content, found.entries);
  const base = `/shared/${token}`;
  return (
    <FileReport
      {...{ report: report(), isWaiting, base, ...dated }}
      content={found.kept.content}
      images={`${base}/images`}
    />
  );
}
