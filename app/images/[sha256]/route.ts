import { showImage } from "#web/show-image";

export const dynamic = "force-dynamic";

type Context = { readonly params: Promise<{ readonly sha256: string }> };

/** An image by its SHA-256; `w` asks for one of the offered widths. */
export async function GET(request: Request, context: Context): Promise<Response> {
  const { sha256 } = await context.params;
  return showImage(sha256, new URL(request.url).searchParams.get("w"), request.headers.get("if-none-match"));
}
