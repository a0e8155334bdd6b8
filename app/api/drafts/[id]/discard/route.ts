import { discardDraft } from "#web/drafts/change-draft";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string }> };

export const POST = write(async (request: Request, context: Context) =>
  discardDraft(request, (await context.params).id),
);
