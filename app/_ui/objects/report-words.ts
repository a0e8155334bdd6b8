import { getFormatter, getTranslations } from "next-intl/server";
import { reportOf } from "#core/object-files/report";
import type { Report } from "#core/object-files/report/blocks";
import type { ReportSource } from "#core/object-files/report/parts";
import type { Room } from "#core/object-files/report/room";
import { wordReport } from "./word-report.ts";

type ReportWords = {
  /** The report in the room that it is given, else in the widest. */
  readonly report: (room?: Room) => Report<string>;
  /** What stands at the foot of a PDF's pages. */
  readonly page: (page: number, of: number) => string;
};

/** A report in the language of who asks. */
export async function reportWords(source: ReportSource): Promise<ReportWords> {
  const [t, period, format] = await Promise.all([
    getTranslations(),
    getTranslations("period"),
    getFormatter(),
  ]);
  const { title } = source.kept.content;
  const report = reportOf(source);
  return {
    report: (room) => wordReport(report(room), t as never, period, format),
    page: (page, of) => t("objectReport.pdf.page", { title, page: String(page), of: String(of) }),
  };
}
