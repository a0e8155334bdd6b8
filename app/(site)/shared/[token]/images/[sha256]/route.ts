import { showSharedImage } from "#web/show-image";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly token: string; readonly sha256: string }> };

/** An image of a file, for who has the link to it; `w` asks for one of the offered widths. */
export async function GET(request: Request, context: Context): Promise<Response> {
  const { token, sha256 } = await context.params;
  const width = new URL(request.url).searchParams.get("w");
  return showSharedImage(token, sha256, width, request.headers.get("if-none-match"));
}
