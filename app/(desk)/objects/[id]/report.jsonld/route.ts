import { objectFile } from "#web/object-files/reading";
import { linkedArtSource } from "#web/object-files/report-source";
import { sendReportJsonLd } from "#web/object-files/send-report";
import { originOf } from "#web/origin";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly id: string }> };

/** The report as Linked Art, for who may see the file. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { id } = await params;
  const found = await objectFile(id);
  if (!found) return new Response(null, { status: 404 });
  const host = originOf(request);
  return sendReportJsonLd(linkedArtSource(found, host), `${host}/objects/${id}`);
}
