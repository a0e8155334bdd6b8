import { currentSession } from "./actor.ts";
import { dropSessionCookie } from "./auth/session-cookie.ts";
import { live } from "./live.ts";
import { done } from "./words-form.ts";

/** Ends the session of this browser; whoever has none is signed out already. */
export async function signOut(request: Request): Promise<Response> {
  const found = await currentSession();
  const { sessions, clock } = await live();
  if (found) await sessions.revoke(found.account.id, found.session, clock.now());
  await dropSessionCookie();
  return done(request, { signedOut: true }, "/sign-in?said=signed-out");
}
