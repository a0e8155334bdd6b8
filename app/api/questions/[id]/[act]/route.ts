import { actOnQuestion } from "#web/act-on-question";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string; readonly act: string }> };

export const POST = write(async (request: Request, context: Context) => {
  const { id, act } = await context.params;
  return actOnQuestion(request, id, act);
});
