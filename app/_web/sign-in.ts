import type { FieldError } from "#core/field-error";
import { nextPath } from "#core/members/next-path";
import { signedInMember } from "./actor.ts";
import { SESSION_COOKIES } from "./auth/session-cookie.ts";
import { getThroughNextAuth, postThroughNextAuth } from "./auth/through-next-auth.ts";
import { keepForm } from "./kept-forms.ts";
import { live } from "./live.ts";
import { redirect } from "./look-up-answer.ts";
import { originOf } from "./origin.ts";
import { readWords, refuse, wantsJson } from "./words-form.ts";

const PROVIDERS = ["password", "demo"] as const;

/** Signs somebody in from a form: by e-mail address and password, or as one of the demo's members. */
export async function signInByForm(
  request: Request,
  provider: (typeof PROVIDERS)[number],
): Promise<Response> {
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, "/sign-in");
  const { password = "", next, ...typed } = form.value;
  const path = nextPath(next);
  const page = `/sign-in?next=${encodeURIComponent(path)}`;
  const answer = await postThroughNextAuth(await live(), request, ["callback", provider], {
    ...typed,
    password,
    callbackUrl: path,
  });
  if (answer.refused) return refuse(request, [answer.refused], typed, page);
  const session = answer.cookies.filter(isSessionCookie);
  if (session.length === 0) throw new Error("next-auth signed somebody in without a session.");
  return withCookies(wantsJson(request) ? Response.json({ next: path }) : redirect(path), session);
}

/** Leads to the OpenID Connect provider; next-auth remembers what it asked there. */
export async function leadElsewhere(request: Request): Promise<Response> {
  const form = await readWords(request);
  const path = nextPath(form.ok ? form.value.next : undefined);
  const wired = await live();
  if (wired.environment.oidc === null) return new Response(null, { status: 404 });
  const answer = await postThroughNextAuth(wired, request, ["signin", "oidc"], { callbackUrl: path });
  const there = answer.location;
  if (there === null || isHere(request, there)) return refuse(request, [ELSEWHERE], {}, "/sign-in");
  return withCookies(redirect(there), answer.cookies);
}

/** Comes back from there: to be signed in, or to tie the account there to the one that is signed in here. */
export async function comeBack(request: Request): Promise<Response> {
  const wired = await live();
  if (wired.environment.oidc === null) return new Response(null, { status: 404 });
  const already = await signedInMember();
  const answer = await getThroughNextAuth(wired, request, ["callback", "oidc"], already);
  const signedIn = answer.cookies.some((cookie) => isSessionCookie(cookie) && !/=;/.test(cookie));
  const errors = [answer.refused ?? ELSEWHERE];
  const to = signedIn ? pathOf(request, answer.location) : `/sign-in?form=${keepForm({ errors, typed: {} })}`;
  return withCookies(redirect(to), answer.cookies);
}

const ELSEWHERE: FieldError = { field: "account", rule: "sign-in-elsewhere-failed", received: "" };

const isSessionCookie = (cookie: string): boolean =>
  SESSION_COOKIES.some((name) => cookie.startsWith(`${name}=`));

const isHere = (request: Request, address: string): boolean =>
  URL.canParse(address) && new URL(address).origin === originOf(request);

const pathOf = (request: Request, address: string | null): string =>
  address !== null && isHere(request, address) ? nextPath(address.slice(originOf(request).length)) : "/";

function withCookies(response: Response, cookies: readonly string[]): Response {
  for (const cookie of cookies) response.headers.append("set-cookie", cookie);
  return response;
}
