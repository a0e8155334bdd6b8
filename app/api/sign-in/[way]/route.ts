import { leadElsewhere, signInByForm } from "#web/sign-in";
import { write } from "#web/write";

type Context = { readonly params: Promise<{ readonly way: string }> };

export const POST = write<Context>(async (request, { params }) => {
  const { way } = await params;
  if (way === "password" || way === "demo") return signInByForm(request, way);
  if (way === "elsewhere") return leadElsewhere(request);
  return new Response(null, { status: 404 });
});
