import { comeBack } from "#web/sign-in";

type Context = { readonly params: Promise<{ readonly nextauth: readonly string[] }> };

/** Of next-auth's addresses the one to which an OpenID Connect provider leads back; forms have handlers of their own. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const [action, provider, ...more] = (await params).nextauth;
  if (action !== "callback" || provider !== "oidc" || more.length > 0)
    return new Response(null, { status: 404 });
  return comeBack(request);
}
