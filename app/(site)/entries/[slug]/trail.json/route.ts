import { downloadTrail } from "#web/download-trail";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly slug: string }> };

/** The trail of an entry, to be checked by whoever wants to. */
export async function GET(_: Request, context: Context): Promise<Response> {
  return downloadTrail((await context.params).slug);
}
