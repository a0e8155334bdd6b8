import { showPhotographToTry } from "#web/show-photograph-to-try";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly name: string }> };

/** One of the demo's photographs to try. */
export async function GET(_request: Request, context: Context): Promise<Response> {
  return showPhotographToTry((await context.params).name);
}
