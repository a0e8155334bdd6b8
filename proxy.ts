import { randomBytes } from "node:crypto";
import { type NextRequest, NextResponse } from "next/server";

/**
 * Sends every page with a content security policy whose nonce only this answer's scripts carry.
 * Source of the directives: W3C Content Security Policy Level 3.
 */
export async function proxy(request: NextRequest): Promise<Response> {
  if (isRefusal(request)) return refused(request);
  const nonce = randomBytes(16).toString("base64");
  const inDevelopment = process.env.NODE_ENV === "development" ? " 'unsafe-eval'" : "";
  const policy = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${inDevelopment}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    `form-action 'self'${elsewhere()}`,
    "frame-ancestors 'none'",
  ].join("; ");
  const headers = new Headers(request.headers);
  headers.set("x-nonce", nonce);
  headers.set("content-security-policy", policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("content-security-policy", policy);
  response.headers.set("x-content-type-options", "nosniff");
  response.headers.set("referrer-policy", "same-origin");
  response.headers.set("permissions-policy", "camera=(self), geolocation=(), microphone=()");
  return response;
}

/** Browsers hold a form to this policy where its answer leads on to, too: to the provider at which one signs in. */
function elsewhere(): string {
  const issuer = process.env.COUNTERMARK_OIDC_ISSUER ?? "";
  return URL.canParse(issuer) ? ` ${new URL(issuer).origin}` : "";
}

const ASKED_BY_OURSELVES = "x-countermark-refusal";

const isRefusal = ({ nextUrl, headers }: NextRequest): boolean =>
  nextUrl.pathname === "/not-allowed" && !headers.has("rsc") && !headers.has(ASKED_BY_OURSELVES);

/**
 * The page that says which rule forbids something, with the status that says so too. A page of the App Router can't
 * choose its status and be whole without scripts (`forbidden()` sends an empty one that scripts fill), so that this
 * host asks itself for it.
 */
async function refused(request: NextRequest): Promise<Response> {
  const { pathname, search } = request.nextUrl;
  const headers = new Headers(request.headers);
  headers.set(ASKED_BY_OURSELVES, "1");
  const own = `http://127.0.0.1:${process.env.PORT ?? "3000"}`;
  const page = await fetch(own + pathname + search, { headers });
  const answer = new Headers(page.headers);
  for (const name of ["content-encoding", "content-length", "transfer-encoding", "connection", "keep-alive"])
    answer.delete(name);
  return new Response(page.body, { status: page.ok ? 403 : page.status, headers: answer });
}

export const config = { matcher: ["/((?!api/|images/|try/|_next/).*)"] };
