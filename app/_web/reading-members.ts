import { cache } from "react";
import type { KeptInterest, Member, MemberEvent, OpenSession } from "#core/members/account";
import type { DemoMember } from "#core/members/demo-member";
import { eventOf } from "#core/trail/chain";
import { currentSession } from "./actor.ts";
import { live } from "./live.ts";

export { keptForm } from "./kept-forms.ts";

/** Members on one page of their list. */
const PAGE = 50;
/** Acts that the page of moderation shows. */
const ACTS = 100;

/** A page of members by name. @param page from 1 */
export async function listMembers(
  words: string,
  page: number,
): Promise<{ readonly members: readonly Member[]; readonly more: boolean }> {
  const found = await (await live()).members.search(words.replaceAll("\0", ""), (page - 1) * PAGE, PAGE + 1);
  return { members: found.slice(0, PAGE), more: found.length > PAGE };
}

/** A member as everybody may know them; null when there is none. */
export const showMember = cache(async (id: string): Promise<Member | null> => {
  const found = await (await live()).members.find(id);
  if (!found) return null;
  const { email: _, hasPassword: __, ...member } = found;
  return member;
});

/** What the declared interests are in, by `kind slug`. */
export async function namesOfInterests(
  interests: readonly KeptInterest[],
): Promise<ReadonlyMap<string, string>> {
  const { makers, entries } = await live();
  const found = await Promise.all(
    interests.map(async ({ in: { kind, slug } }) => {
      const name =
        kind === "maker"
          ? (await makers.bySlug(slug))?.summary.name
          : (await entries.bySlug(slug))?.summary.title;
      return [`${kind} ${slug}`, name ?? slug] as const;
    }),
  );
  return new Map(found);
}

/** Where whoever is signed in is signed in, and which of these is this browser. */
export async function openSessions(): Promise<{
  readonly sessions: readonly OpenSession[];
  readonly current: string;
}> {
  const found = await currentSession();
  if (!found) return { sessions: [], current: "" };
  const { sessions, clock } = await live();
  return { sessions: await sessions.list(found.account.id, clock.now()), current: found.session };
}

/** What was done about members, or about one, the latest first. */
export async function memberActs(member: string | null): Promise<readonly MemberEvent[]> {
  const links = await (await live()).trails.links("members");
  return links
    .map((link) => eventOf<MemberEvent>(link))
    .filter((event) => member === null || event.member.id === member)
    .reverse()
    .slice(0, ACTS);
}

/** One of the demo's ready accounts? Whoever comes can be them, so none may be given a password that outlasts the demo. */
export async function isOfDemo(member: string): Promise<boolean> {
  return (await (await live()).demoMembers.all()).some(({ id }) => id === member);
}

/** Ways to sign in besides a password: the name of the provider elsewhere, and the demo's ready accounts. */
export async function waysToSignIn(): Promise<{
  readonly elsewhere: string | null;
  readonly demo: readonly DemoMember[];
}> {
  const { environment, demoMembers, members } = await live();
  const ready = await demoMembers.all();
  // A database without the demo in it has none of its members, whatever the setting says.
  const there = ready[0] !== undefined && (await members.find(ready[0].id)) !== null;
  return { elsewhere: environment.oidc?.name ?? null, demo: there ? ready : [] };
}
