import { readEnvironment } from "./environment.ts";
import { unexpected } from "./unexpected.ts";

type Handler<C> = (request: Request, context: C) => Promise<Response>;

/**
 * The one wrapper round every write: refuses what another site's page sends, and turns the unexpected into an event
 * id and a generic text, so that nothing of the inside leaks out.
 */
export function write<C>(handler: Handler<C>): Handler<C> {
  return async (request, context) => {
    if (!isSameOrigin(request))
      return Response.json(
        { error: { field: "origin", rule: "same-origin", received: request.headers.get("origin") ?? "" } },
        { status: 403 },
      );
    try {
      return await handler(request, context);
    } catch (error) {
      return Response.json({ error: unexpected(error) }, { status: 500 });
    }
  };
}

/**
 * Browsers say where a write comes from; a client that is no browser says nothing and holds no one's cookies.
 * Source: OWASP Cross-Site Request Forgery Prevention Cheat Sheet, "Fetch Metadata headers" and "Verifying origin".
 */
export function isSameOrigin(request: Request): boolean {
  const site = request.headers.get("sec-fetch-site");
  if (site !== null) return site === "same-origin" || site === "none";
  const origin = request.headers.get("origin");
  if (origin === null) return true;
  const allowed = readEnvironment().origin;
  if (allowed !== null && new URL(allowed).origin === origin) return true;
  const host = request.headers.get("host");
  return URL.canParse(origin) && new URL(origin).host === host;
}
