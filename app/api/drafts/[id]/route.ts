import { keepDraft } from "#web/drafts/keep-draft";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string }> };

export const POST = write(async (request: Request, context: Context) =>
  keepDraft(request, (await context.params).id),
);
