import { redirect } from "next/navigation";
import { cache } from "react";
import { type Account, actingAs } from "#core/members/account";
import type { ActingMember, Actor } from "#core/members/member";
import { type Action, may } from "#core/permissions";
import { readSession } from "#usecases/keep-session";
import { requireMember } from "#usecases/review/require-member";
import { sessionKey } from "./auth/session-cookie.ts";
import { keepForm } from "./kept-forms.ts";
import { live } from "./live.ts";

/** Who asks, in which session; null when nobody is signed in. Asked twice for one page, it is read once. */
export const currentSession = cache(
  async (): Promise<{ readonly session: string; readonly account: Account } | null> => {
    const key = await sessionKey();
    return key === null ? null : readSession(await live(), key);
  },
);

/** Who asks for this page, or sends this write. */
export async function actor(): Promise<Actor> {
  const found = await currentSession();
  return found ? actingAs(found.account) : { kind: "reader" };
}

/** Id of the member who is signed in and not suspended; null for anybody else. */
export async function signedInMember(): Promise<string | null> {
  const who = await actor();
  return who.kind === "member" && !who.suspended ? who.id : null;
}

/**
 * For a page that needs somebody signed in who may do that: leads a reader to signing in and back, and anybody else
 * who may not to a page that says which rule forbids it.
 * @param path of the page, or what makes it when it is needed
 */
export async function actorWhoMay(action: Action, path: string | (() => string)): Promise<ActingMember> {
  const who = await actor();
  if (who.kind === "member" && may(who, action)) return who;
  if (who.kind === "reader") {
    const next = typeof path === "string" ? path : path();
    redirect(`/sign-in?next=${encodeURIComponent(next)}`);
  }
  const refused = requireMember(who, action);
  redirect(`/not-allowed?form=${keepForm({ errors: refused.ok ? [] : [refused.error], typed: {} })}`);
}
