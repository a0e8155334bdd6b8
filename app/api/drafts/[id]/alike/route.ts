import { showAlike } from "#web/drafts/change-draft";

type Context = { readonly params: Promise<{ readonly id: string }> };

export async function GET(request: Request, context: Context): Promise<Response> {
  return showAlike(request, (await context.params).id);
}
