import { reportOf } from "#core/object-files/report";
import { objectFile } from "#web/object-files/reading";
import { reportSource } from "#web/object-files/report-source";
import { sendReportPdf } from "#web/object-files/send-report";
import { originOf } from "#web/origin";
import { footOf, reportInWords } from "../../../../_ui/objects/report-words.ts";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** The report as a PDF, for who may see the file; `paper` is a4 or letter. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const found = await objectFile((await params).id);
  if (!found) return new Response(null, { status: 404 });
  const source = await reportSource(found, originOf(request));
  const report = await reportInWords(reportOf(source));
  return sendReportPdf(request, source, report, await footOf(report.title));
}
