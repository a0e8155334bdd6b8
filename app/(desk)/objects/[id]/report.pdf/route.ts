import { objectFile } from "#web/object-files/reading";
import { reportSource } from "#web/object-files/report-source";
import { sendReportPdf } from "#web/object-files/send-report";
import { originOf } from "#web/origin";
import { reportWords } from "../../../../_ui/objects/report-words.ts";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** The report as a PDF, for who may see the file; `paper` is a4 or letter. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const found = await objectFile((await params).id);
  if (!found) return new Response(null, { status: 404 });
  const source = await reportSource(found, originOf(request));
  return sendReportPdf(request, source, await reportWords(source));
}
