import { settleDraft } from "#web/drafts/settle-draft";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string }> };

export const POST = write(async (request: Request, context: Context) =>
  settleDraft(request, (await context.params).id),
);
