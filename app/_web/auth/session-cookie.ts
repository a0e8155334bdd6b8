import { cookies } from "next/headers";
import { decode } from "next-auth/jwt";
import { live } from "../live.ts";

/** As next-auth names them: the first over HTTPS, the second without. */
export const SESSION_COOKIES = ["__Secure-next-auth.session-token", "next-auth.session-token"] as const;

/** The key of the session that this browser holds; null when it holds none that was sealed here. */
export async function sessionKey(): Promise<string | null> {
  const held = await cookies();
  for (const name of SESSION_COOKIES) {
    const token = held.get(name)?.value;
    const key = token === undefined || token.length > 4000 ? null : await open(token);
    if (key !== null) return key;
  }
  return null;
}

/** Has the browser forget its session. */
export async function dropSessionCookie(): Promise<void> {
  const held = await cookies();
  for (const name of SESSION_COOKIES)
    if (held.has(name))
      held.set(name, "", {
        httpOnly: true,
        sameSite: "lax",
        path: "/",
        secure: name.startsWith("__"),
        maxAge: 0,
      });
}

async function open(token: string): Promise<string | null> {
  try {
    const { secret } = await live();
    const key = (await decode({ token, secret: secret() }))?.session;
    return typeof key === "string" ? key : null;
  } catch {
    // Sealed with another secret, over, or no token at all: whoever holds it is not signed in.
    return null;
  }
}
