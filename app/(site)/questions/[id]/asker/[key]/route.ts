import { takeAskerKey } from "#web/take-asker-key";

type Context = { readonly params: Promise<{ readonly id: string; readonly key: string }> };

export async function GET(request: Request, context: Context): Promise<Response> {
  const { id, key } = await context.params;
  return takeAskerKey(request, id, key);
}
