import { getFormatter, getTranslations } from "next-intl/server";
import type { Phrase, Report } from "#core/object-files/report/blocks";
import { wordReport } from "./word-report.ts";

/** A report in the language of who asks. */
export async function reportInWords(report: Report<Phrase>): Promise<Report<string>> {
  const [t, period, format] = await Promise.all([
    getTranslations(),
    getTranslations("period"),
    getFormatter(),
  ]);
  return wordReport(report, t as never, period, format);
}

/** What stands at the foot of a PDF's pages. */
export async function footOf(title: string): Promise<(page: number, of: number) => string> {
  const t = await getTranslations("objectReport.pdf");
  return (page, of) => t("page", { title, page: String(page), of: String(of) });
}
