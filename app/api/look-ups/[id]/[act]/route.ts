import { changeLookUp } from "#web/change-look-up";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly id: string; readonly act: string }> };

export const POST = write(async (_request: Request, context: Context) => {
  const { id, act } = await context.params;
  return changeLookUp(id, act);
});
