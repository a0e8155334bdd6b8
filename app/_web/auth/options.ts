import type { NextAuthOptions } from "next-auth";
import type { FieldError } from "#core/field-error";
import { nextPath } from "#core/members/next-path";
import type { Result } from "#core/result";
import { openSession, SESSION_DAYS } from "#usecases/keep-session";
import { admitMember } from "#usecases/members/admit-member";
import { signIn } from "#usecases/sign-in";
import { signInElsewhere } from "#usecases/sign-in-elsewhere";
import { clientOf } from "../client-pace.ts";
import type { OidcSettings } from "../environment.ts";
import type { Live } from "../live.ts";

/** What became of an attempt to sign in, beside what next-auth answers. */
export type Outcome = { refused: FieldError | null };

/** Browsers name themselves at length; so much is kept to tell one's own apart. */
const USER_AGENT = 200;

/**
 * How next-auth signs in here, for one request; why it refused is left in `outcome`.
 * @param signedIn id of the member whose session the request belongs to
 */
export function authOptions(
  wired: Live,
  request: Request,
  outcome: Outcome,
  signedIn: string | null,
): NextAuthOptions {
  let member = "";
  const note = (result: Result<string, FieldError>): boolean => {
    if (result.ok) member = result.value;
    else outcome.refused = result.error;
    return result.ok;
  };
  const byWords = (
    id: string,
    judge: (given: Record<string, unknown>) => Promise<Result<string, FieldError>>,
  ) => ({
    id,
    name: id,
    type: "credentials" as const,
    credentials: {},
    authorize: async (given: Record<string, unknown> | undefined) =>
      note(await judge(given ?? {})) ? { id: member } : null,
  });
  const text = (value: unknown) => (typeof value === "string" ? value : "");
  return {
    secret: wired.secret(),
    session: { strategy: "jwt", maxAge: SESSION_DAYS * 24 * 60 * 60 },
    pages: { signIn: "/sign-in", error: "/sign-in" },
    logger: {
      error: (code, about) => process.stderr.write(`sign-in: ${code} ${wordsOf(about)}\n`),
      warn: () => undefined,
      debug: () => undefined,
    },
    providers: [
      byWords("password", ({ email, password }) =>
        signIn(wired, { email: text(email), password: text(password), client: clientOf(request) }),
      ),
      byWords("demo", async ({ member: id }) => {
        const ready = (await wired.demoMembers.all()).find((each) => each.id === id);
        return admitMember(wired.members, ready?.id ?? "");
      }),
      ...(wired.environment.oidc ? [openIdProvider(wired.environment.oidc)] : []),
    ],
    callbacks: {
      async signIn({ account, profile }) {
        if (account?.type !== "oauth") return true;
        const told = (profile ?? {}) as Record<string, unknown>;
        const identity = {
          provider: wired.environment.oidc?.issuer ?? "",
          subject: account.providerAccountId,
          email: text(told.email),
          emailVerified: told.email_verified === true,
          name: text(told.name),
        };
        return note(await signInElsewhere(wired, identity, signedIn));
      },
      // The cookie holds the key of a session and nothing else: who that is, is asked of the database each time.
      async jwt({ token, user }) {
        if (!user) return { session: token.session };
        const agent = (request.headers.get("user-agent") ?? "").slice(0, USER_AGENT);
        return { session: await openSession(wired, member, agent) };
      },
      redirect: ({ url, baseUrl }) =>
        baseUrl + nextPath(url.startsWith(baseUrl) ? url.slice(baseUrl.length) : url),
    },
  };
}

/** Source: OpenID Connect Core 1.0; PKCE (RFC 7636), state and nonce are all checked. */
function openIdProvider({ issuer, clientId, clientSecret, name }: OidcSettings) {
  return {
    id: "oidc",
    name,
    type: "oauth" as const,
    wellKnown: `${issuer.replace(/\/$/, "")}/.well-known/openid-configuration`,
    authorization: { params: { scope: "openid email profile" } },
    idToken: true,
    checks: ["pkce" as const, "state" as const, "nonce" as const],
    clientId,
    clientSecret,
    profile: ({ sub }: { readonly sub: string }) => ({ id: sub }),
  };
}

/** What next-auth tells of an error can hold tokens: its message alone is written down. */
function wordsOf(about: unknown): string {
  const error = (about as { readonly error?: unknown } | null)?.error ?? about;
  return error instanceof Error ? error.message : "";
}
