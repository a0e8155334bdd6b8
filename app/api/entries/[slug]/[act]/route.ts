import { actOnEntry } from "#web/act-on-entry";
import { actor } from "#web/actor";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly slug: string; readonly act: string }> };

export const POST = write(async (request: Request, context: Context) => {
  const { slug, act } = await context.params;
  return actOnEntry(request, slug, act, await actor());
});
