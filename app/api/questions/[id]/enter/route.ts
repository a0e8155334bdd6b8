import { enterQuestion } from "#web/enter-question";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string }> };

export const POST = write(async (request: Request, context: Context) =>
  enterQuestion(request, (await context.params).id),
);
