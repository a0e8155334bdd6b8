import { showAlignment } from "#web/show-alignment";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly id: string }> };

export async function GET(request: Request, context: Context): Promise<Response> {
  const { id } = await context.params;
  return showAlignment(id, new URL(request.url).searchParams);
}
