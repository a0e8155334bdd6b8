import { sharedFile } from "#web/object-files/reading";
import { linkedArtSource } from "#web/object-files/report-source";
import { sendReportJsonLd } from "#web/object-files/send-report";
import { originOf } from "#web/origin";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly token: string }> };

/** The report as Linked Art, for who has the link to its file. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { token } = await params;
  const found = await sharedFile(token);
  if (!found) return new Response(null, { status: 404 });
  const host = originOf(request);
  return sendReportJsonLd(linkedArtSource(found, host), `${host}/shared/${token}`);
}
