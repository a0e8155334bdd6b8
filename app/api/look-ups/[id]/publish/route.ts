import { publishQuestion } from "#web/publish-question";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string }> };

export const POST = write(async (request: Request, context: Context) =>
  publishQuestion(request, (await context.params).id),
);
