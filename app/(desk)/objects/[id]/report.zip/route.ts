import { objectFile } from "#web/object-files/reading";
import { reportSource } from "#web/object-files/report-source";
import { sendReportZip } from "#web/object-files/send-report";
import { originOf } from "#web/origin";
import { reportWords } from "../../../../_ui/objects/report-words.ts";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** The report with its photographs and their sums, for who may see the file. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id } = await params;
  const found = await objectFile(id);
  if (!found) return new Response(null, { status: 404 });
  const host = originOf(request);
  const source = await reportSource(found, host);
  return sendReportZip(source, `${host}/objects/${id}`, await reportWords(source));
}
