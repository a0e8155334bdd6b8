import type { NextApiRequest, NextApiResponse } from "next";
import imported from "next-auth";
import type { Live } from "../live.ts";
import { originOf } from "../origin.ts";
import { authOptions, type Outcome } from "./options.ts";

// A package of the older kind: a bundler gives its function, Node the module that holds it.
const NextAuth = ("default" in imported ? imported.default : imported) as typeof imported;

type Given = Readonly<Record<string, string>>;
type Answered = Outcome & {
  /** As they go into the header. */
  readonly cookies: readonly string[];
  /** Where next-auth leads; null when nowhere. */
  readonly location: string | null;
  readonly body: unknown;
};

/**
 * Asks next-auth to do something for this request, with a CSRF token that is made for it: the form's origin was
 * checked already, so that it can be a plain one.
 * @param path the action and the provider
 */
export async function postThroughNextAuth(
  wired: Live,
  request: Request,
  path: readonly [string, string],
  fields: Given,
): Promise<Answered> {
  const csrf = await throughNextAuth(wired, request, "GET", ["csrf"], {});
  const { csrfToken } = csrf.body as { readonly csrfToken: string };
  const made = Object.fromEntries(csrf.cookies.map(nameAndValue));
  return throughNextAuth(wired, request, "POST", path, { ...fields, csrfToken }, made);
}

/**
 * The same for an address that next-auth itself gave out, with what stands in its query.
 * @param signedIn id of the member who is signed in already
 */
export async function getThroughNextAuth(
  wired: Live,
  request: Request,
  path: readonly [string, string],
  signedIn: string | null = null,
): Promise<Answered> {
  const given = Object.fromEntries(new URL(request.url).searchParams);
  return throughNextAuth(wired, request, "GET", path, given, {}, signedIn);
}

async function throughNextAuth(
  wired: Live,
  request: Request,
  method: "GET" | "POST",
  nextauth: readonly string[],
  given: Given,
  made: Given = {},
  signedIn: string | null = null,
): Promise<Answered> {
  // With this, next-auth takes its own address from the two headers below, and not from NEXTAUTH_URL.
  process.env.AUTH_TRUST_HOST ??= "1";
  const outcome: Outcome = { refused: null };
  const origin = new URL(originOf(request));
  const asked = {
    method,
    query: { ...(method === "GET" ? given : {}), nextauth: [...nextauth] },
    body: method === "POST" ? { ...given } : undefined,
    cookies: { ...cookiesOf(request), ...made },
    headers: { "x-forwarded-host": origin.host, "x-forwarded-proto": origin.protocol.replace(":", "") },
  };
  const answer = new Answer();
  await NextAuth(
    asked as unknown as NextApiRequest,
    answer as unknown as NextApiResponse,
    authOptions(wired, request, outcome, signedIn),
  );
  const location = answer.getHeader("location");
  return {
    ...outcome,
    cookies: [answer.getHeader("set-cookie") ?? []].flat(),
    location: typeof location === "string" ? location : null,
    body: answer.body,
  };
}

/** What next-auth writes its answer into. */
class Answer {
  body: unknown = null;
  private readonly headers = new Map<string, string | string[]>();

  status(): this {
    return this;
  }
  getHeader(name: string): string | string[] | undefined {
    return this.headers.get(name.toLowerCase());
  }
  setHeader(name: string, value: string | string[]): this {
    this.headers.set(name.toLowerCase(), value);
    return this;
  }
  end(): void {}
  json(body: unknown): void {
    this.body = body;
  }
  send(body: unknown): void {
    this.body = body;
  }
}

function cookiesOf(request: Request): Given {
  const pairs = (request.headers.get("cookie") ?? "").split(/;\s*/).filter((pair) => pair.includes("="));
  return Object.fromEntries(pairs.map(nameAndValue));
}

function nameAndValue(pair: string): readonly [string, string] {
  const [, name = "", value = ""] = /^\s*([^=]+)=([^;]*)/.exec(pair) ?? [];
  try {
    return [name, decodeURIComponent(value)];
  } catch {
    return [name, value];
  }
}
