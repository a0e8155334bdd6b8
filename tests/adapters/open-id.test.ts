import { decode } from "next-auth/jwt";
import { afterAll, beforeAll, expect, it } from "vitest";
import { joinAsMember } from "#usecases/join-as-member";
import { openSession, readSession } from "#usecases/keep-session";
import { getThroughNextAuth, postThroughNextAuth } from "#web/auth/through-next-auth";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { type Claims, openIdProvider } from "../setup/open-id-provider.ts";
import { wireScratch } from "../setup/scratch-reference.ts";

const HERE = "http://127.0.0.1:3999";
const CLIENT = { id: "countermark", secret: "kept-by-both" };

describeOnBothDatabases("signing in elsewhere", (database) => {
  let provider: Awaited<ReturnType<typeof openIdProvider>>;
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  beforeAll(async () => {
    provider = await openIdProvider(CLIENT);
    const scratch = await wireScratch(database(), false);
    const oidc = {
      issuer: provider.issuer,
      clientId: CLIENT.id,
      clientSecret: CLIENT.secret,
      name: "The society",
    };
    wired = { ...scratch, environment: { ...scratch.environment, oidc } };
  });
  afterAll(async () => {
    await provider.close();
    await wired.end();
  });

  const cookieOf = (set: readonly string[]) => set.map((each) => each.split(";")[0]).join("; ");

  /** There and back. @returns who is signed in, or the rule that refused it */
  async function signIn(
    claims: Claims,
    signedIn: string | null = null,
    meddle = (back: URL) => back,
  ): Promise<string> {
    provider.letIn(claims);
    const asked = await postThroughNextAuth(
      wired,
      new Request(`${HERE}/api/sign-in/elsewhere`, { method: "POST" }),
      ["signin", "oidc"],
      { callbackUrl: "/account" },
    );
    expect(asked.location).toContain(`${provider.issuer}/authorize?`);
    const there = await fetch(asked.location ?? "", { redirect: "manual" });
    const back = meddle(new URL(there.headers.get("location") ?? ""));
    expect(back.origin + back.pathname).toBe(`${HERE}/api/auth/callback/oidc`);
    const headers = { cookie: cookieOf(asked.cookies), "user-agent": "test" };
    const returned = new Request(back, { headers });
    const answer = await getThroughNextAuth(wired, returned, ["callback", "oidc"], signedIn);
    const token = /next-auth\.session-token=([^;]+)/.exec(answer.cookies.join("\n"))?.[1];
    if (token === undefined) return answer.refused?.rule ?? "failed";
    expect(answer.location).toBe(`${HERE}/account`);
    const sealed = await decode({ token, secret: wired.secret() });
    expect(Object.keys(sealed ?? {}).sort()).toEqual(["exp", "iat", "jti", "session"]);
    return (await readSession(wired, String(sealed?.session)))?.account.id ?? "nobody";
  }

  it("makes a member of who has a verified address, and knows them again by their identity alone", async () => {
    const first = await signIn({
      sub: "1",
      email: "New@Example.org",
      email_verified: true,
      name: "Ida Corran",
    });
    expect(await wired.members.find(first)).toMatchObject({ name: "Ida Corran", email: "new@example.org" });
    expect(await signIn({ sub: "1", email: "moved@example.org", email_verified: false })).toBe(first);
  });

  it("refuses an address that is not verified, whoever has it here", async () => {
    const joined = await joinAsMember(wired, {
      name: "Bram",
      email: "bram@example.org",
      password: "long enough, 1803",
    });
    expect(joined.ok).toBe(true);
    for (const email_verified of [false, undefined, "true"])
      expect(await signIn({ sub: "2", email: "bram@example.org", email_verified })).toBe("email-unverified");
    expect(await wired.members.byIdentity({ provider: provider.issuer, subject: "2" })).toBeNull();
  });

  it("hands no account over by its address: it is refused, and tied once its member is signed in", async () => {
    const email = "carla@example.org";
    const joined = await joinAsMember(wired, { name: "Carla", email, password: "long enough, 1803" });
    const id = joined.ok ? joined.value : "";
    const key = await openSession(wired, id, "carla");
    expect(await signIn({ sub: "3", email, email_verified: true })).toBe("account-here-already");
    expect((await readSession(wired, key))?.account.id).toBe(id);
    expect((await wired.members.byEmail(email))?.passwordHash).not.toBeNull();

    expect(await signIn({ sub: "3", email: "elsewhere@example.org", email_verified: false }, id)).toBe(id);
    expect(await signIn({ sub: "3", email, email_verified: true })).toBe(id);
    expect((await readSession(wired, key))?.account.id).toBe(id);
  });

  it("leaves an identity with the member who has it, whoever is signed in", async () => {
    const first = await signIn({ sub: "5", email: "five@example.org", email_verified: true });
    const second = await signIn({ sub: "6", email: "six@example.org", email_verified: true });
    expect(await signIn({ sub: "5", email: "five@example.org", email_verified: true }, second)).toBe(first);
  });

  it("refuses a suspended member", async () => {
    const id = await signIn({ sub: "4", email: "four@example.org", email_verified: true });
    await wired.database.prisma.member.update({ where: { id }, data: { suspendedAt: new Date() } });
    expect(await signIn({ sub: "4", email: "four@example.org", email_verified: true })).toBe(
      "account-suspended",
    );
  });
});
