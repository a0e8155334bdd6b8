import type { Account } from "#core/members/account";
import type { Clock, Keys, Sessions } from "./ports.ts";

type Needs = { readonly sessions: Sessions; readonly keys: Keys; readonly clock: Clock };

/** A session ends after so many days, whatever happens. */
export const SESSION_DAYS = 30;
const DAY_MS = 24 * 60 * 60 * 1000;
/** How exactly it is known when a session was last used. */
const SEEN_MS = 5 * 60 * 1000;

/** @returns what the browser is to hold; its SHA-256 alone is kept */
export async function openSession(needs: Needs, member: string, userAgent: string): Promise<string> {
  const { key, hash } = needs.keys.make();
  const at = needs.clock.now();
  const expiresAt = new Date(at.getTime() + SESSION_DAYS * DAY_MS);
  await needs.sessions.open({ id: hash, member, at, expiresAt, userAgent });
  return key;
}

/** Who holds the key of an open session; null when it is over, revoked or none. */
export async function readSession(
  needs: Needs,
  key: string,
): Promise<{ readonly session: string; readonly account: Account } | null> {
  const session = needs.keys.hashOf(key);
  const now = needs.clock.now();
  const found = await needs.sessions.find(session, now);
  if (!found) return null;
  if (now.getTime() - found.lastSeenAt.getTime() > SEEN_MS) await needs.sessions.seen(session, now);
  return { session, account: found.account };
}
