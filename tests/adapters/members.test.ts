import { stat } from "node:fs/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { actingAs } from "#core/members/account";
import { SIGN_IN_LIMITS } from "#core/members/sign-in-pace";
import { changePassword } from "#usecases/change-account";
import { declareInterest, endInterest } from "#usecases/declare-interest";
import { joinAsMember } from "#usecases/join-as-member";
import { openSession, readSession, SESSION_DAYS } from "#usecases/keep-session";
import { changeStanding } from "#usecases/members/change-standing";
import { signIn } from "#usecases/sign-in";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { importFiles, wireScratch } from "../setup/scratch-reference.ts";

type Wired = Awaited<ReturnType<typeof wireScratch>>;

const PASSWORD = "a pewter flagon, 1803";
const REASON = "Wrote the book on the matter.";

describeOnBothDatabases("members", (database) => {
  let wired: Wired;
  let names = 0;
  beforeAll(async () => {
    wired = await wireScratch(database(), false);
    await importFiles(wired, { "makers.csv": "key,name,kind\nida-corran,Ida Corran,person\n" });
  });
  afterAll(() => wired.end());

  const joined = async (email = `member-${++names}@example.org`) => {
    const result = await joinAsMember(wired, { name: "Ida Corran", email, password: PASSWORD });
    if (!result.ok) throw new Error(result.error.rule);
    return { id: result.value, email };
  };
  const account = async (id: string) => {
    const found = await wired.members.find(id);
    if (!found) throw new Error("no such member");
    return found;
  };
  const at = (moment: Date) => ({ ...wired, clock: { now: () => moment } });
  const tryPassword = (email: string, password: string, client = `client of ${email}`, now = new Date()) =>
    signIn(at(now), { email, password, client });
  const ruleOf = (
    result: { readonly ok: true } | { readonly ok: false; readonly error: { rule: string } },
  ) => (result.ok ? "ok" : result.error.rule);

  it("join once with an address, however it is written, also at the same moment", async () => {
    const { email } = await joined("Twice@Example.org".toLowerCase());
    expect(ruleOf(await joinAsMember(wired, { name: "Bram", email, password: PASSWORD }))).toBe(
      "email-taken",
    );
    const both = await Promise.all(
      [1, 2].map(() => joinAsMember(wired, { name: "Bram", email: "race@example.org", password: PASSWORD })),
    );
    expect(both.map(ruleOf).sort()).toEqual(["email-taken", "ok"]);
  });

  it("keep a password as an argon2id hash alone, and sign in with it", async () => {
    const { id, email } = await joined();
    const kept = await wired.members.byEmail(email);
    expect(kept?.passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(await tryPassword(email.toUpperCase(), PASSWORD)).toEqual({ ok: true, value: id });
    expect(ruleOf(await tryPassword(email, `${PASSWORD} `))).toBe("sign-in-wrong");
  });

  it("have one answer for an unknown address and for a wrong password, after as much work", async () => {
    const { email } = await joined();
    const times = { known: [] as number[], unknown: [] as number[] };
    for (let i = 0; i < 5; i++)
      for (const [kind, address] of [
        ["known", email],
        ["unknown", `nobody-${i}@example.org`],
      ] as const) {
        const begun = performance.now();
        const refused = await tryPassword(address, "not the password", `timing ${i}`);
        times[kind].push(performance.now() - begun);
        expect(refused).toEqual({
          ok: false,
          error: { field: "email", rule: "sign-in-wrong", received: address },
        });
      }
    const median = (of: number[]) => of.sort((a, b) => a - b)[2] ?? 0;
    expect(median(times.unknown)).toBeGreaterThan(median(times.known) / 3);
  });

  it("are let try so often and no more, also when all tries come at once, and again when time has passed", async () => {
    const { email } = await joined();
    const now = new Date();
    const many = await Promise.all(
      Array.from({ length: 16 }, () => tryPassword(email, "not the password", "c", now)),
    );
    const rules = many.map(ruleOf);
    expect(rules.filter((rule) => rule === "sign-in-wrong").length).toBeLessThanOrEqual(SIGN_IN_LIMITS.email);
    expect(rules.filter((rule) => rule === "sign-in-too-often").length).toBeGreaterThanOrEqual(6);
    for (let i = 0; i < SIGN_IN_LIMITS.email; i++) await tryPassword(email, "not the password", "c", now);
    expect(await tryPassword(email, PASSWORD, "elsewhere", now)).toMatchObject({
      ok: false,
      error: { rule: "sign-in-too-often", params: { minutes: 15 } },
    });
    const later = new Date(now.getTime() + 15 * 60_000 + 1);
    expect(ruleOf(await tryPassword(email, PASSWORD, "c", later))).toBe("ok");
  });

  it("of one client are let fail thirty times, whoever's address it tries", async () => {
    const now = new Date();
    for (let i = 0; i < SIGN_IN_LIMITS.client; i++)
      expect(ruleOf(await tryPassword(`guess-${i}@example.org`, "x", "one client", now))).toBe(
        "sign-in-wrong",
      );
    expect(ruleOf(await tryPassword("guess-z@example.org", "x", "one client", now))).toBe(
      "sign-in-too-often",
    );
  });

  it("are signed in for as long as their session is neither over nor revoked", async () => {
    const { id } = await joined();
    const [here, there] = [await openSession(wired, id, "here"), await openSession(wired, id, "there")];
    const row = await wired.database.prisma.session.findMany({ where: { memberId: id } });
    expect(JSON.stringify(row)).not.toContain(here);
    expect((await readSession(wired, here))?.account.id).toBe(id);
    const over = new Date(Date.now() + SESSION_DAYS * 24 * 60 * 60 * 1000 + 1000);
    expect(await readSession(at(over), here)).toBeNull();
    expect(await readSession(wired, "no key at all")).toBeNull();
    const session = (await readSession(wired, here))?.session ?? "";
    await wired.sessions.revokeAll(id, new Date(), session);
    expect(await readSession(wired, there)).toBeNull();
    expect((await wired.sessions.list(id, new Date())).map(({ userAgent }) => userAgent)).toEqual(["here"]);
    const stranger = await joined();
    await wired.sessions.revoke(stranger.id, session, new Date());
    expect(await readSession(wired, here)).not.toBeNull();
    await wired.sessions.revoke(id, session, new Date());
    expect(await readSession(wired, here)).toBeNull();
  });

  it("leave no session behind that is over or revoked", async () => {
    const { id } = await joined();
    const rows = () => wired.database.prisma.session.count({ where: { memberId: id } });
    const [open, revoked] = [await openSession(wired, id, "open"), await openSession(wired, id, "revoked")];
    await wired.sessions.revoke(id, (await readSession(wired, revoked))?.session ?? "", new Date());
    const DAYS_MS = SESSION_DAYS * 24 * 60 * 60 * 1000;
    await openSession(at(new Date(Date.now() - DAYS_MS - 1000)), id, "over");
    expect(await rows()).toBe(3);
    expect(await wired.sessions.forget(new Date())).toBeGreaterThanOrEqual(2);
    expect(await rows()).toBe(1);
    expect((await readSession(wired, open))?.account.id).toBe(id);
    expect(await wired.sessions.forget(new Date())).toBe(0);
  });

  it("are signed out everywhere else by a new password, which needs the old one", async () => {
    const { id, email } = await joined();
    const [here, there] = [await openSession(wired, id, ""), await openSession(wired, id, "")];
    const session = (await readSession(wired, here))?.session ?? "";
    const by = actingAs(await account(id));
    const next = "another long password";
    const change = (current: string) => changePassword(wired, by, { current, password: next, session });
    expect(ruleOf(await change("not the password"))).toBe("password-wrong");
    expect(await readSession(wired, there)).not.toBeNull();
    expect(ruleOf(await change(PASSWORD))).toBe("ok");
    expect(await readSession(wired, there)).toBeNull();
    expect(await readSession(wired, here)).not.toBeNull();
    expect(ruleOf(await tryPassword(email, PASSWORD))).toBe("sign-in-wrong");
    expect(ruleOf(await tryPassword(email, next))).toBe("ok");
  });

  it("are appointed and suspended on the trail, once, and a suspension signs out", async () => {
    const moderator = await joined();
    const { id, email } = await joined();
    const host = { kind: "host" } as const;
    await changeStanding(wired, host, {
      member: moderator.id,
      command: { type: "appoint moderator" },
      reason: REASON,
    });
    const by = actingAs(await account(moderator.id));
    const before = (await wired.trails.links("members")).length;
    const act = (command: Parameters<typeof changeStanding>[2]["command"], who = by) =>
      changeStanding(wired, who, { member: id, command, reason: REASON });
    await Promise.all([1, 2, 3].map(() => act({ type: "appoint reviewer", fields: ["toys"] })));
    const key = await openSession(wired, id, "");
    await act({ type: "suspend" });
    expect(await readSession(wired, key)).toBeNull();
    expect((await account(id)).suspendedAt).not.toBeNull();
    expect(ruleOf(await tryPassword(email, PASSWORD))).toBe("account-suspended");
    expect(ruleOf(await tryPassword(email, "not the password"))).toBe("sign-in-wrong");
    await act({ type: "restore" });
    expect(ruleOf(await tryPassword(email, PASSWORD))).toBe("ok");
    expect((await account(id)).fields).toEqual(["toys"]);

    const links = (await wired.trails.links("members")).slice(before);
    expect(links.map(({ type, by, payload }) => ({ type, by: by.id, payload }))).toEqual(
      ["reviewer appointed", "member suspended", "member restored"].map((type) => ({
        type,
        by: moderator.id,
        payload: {
          member: { id, name: "Ida Corran" },
          reason: REASON,
          ...(type === "reviewer appointed" ? { fields: ["toys"] } : {}),
        },
      })),
    );
    const contributor = actingAs(await account(id));
    for (const command of [{ type: "suspend" }, { type: "appoint moderator" }] as const)
      expect(
        ruleOf(await changeStanding(wired, contributor, { member: moderator.id, command, reason: REASON })),
      ).toBe("role-needed");
    expect(
      ruleOf(
        await changeStanding(wired, by, { member: "nobody", command: { type: "suspend" }, reason: REASON }),
      ),
    ).toBe("member-unknown");
  });

  it("declare an interest once, end it once, and cannot make it undone", async () => {
    const { id } = await joined();
    const by = actingAs(await account(id));
    const interest = { in: { kind: "maker", slug: "ida-corran" }, stake: "trade", note: "A stall." } as const;
    await Promise.all([1, 2, 3].map(() => declareInterest(wired, by, interest)));
    const [kept, ...more] = (await account(id)).interests;
    expect(more).toEqual([]);
    expect(kept).toMatchObject({ ...interest, endedAt: null });
    expect(actingAs(await account(id)).interests).toHaveLength(1);
    const nowhere = { ...interest, in: { kind: "maker", slug: "nobody" } } as const;
    expect(ruleOf(await declareInterest(wired, by, nowhere))).toBe("maker-not-here");
    const stranger = actingAs(await account((await joined()).id));
    expect(ruleOf(await endInterest(wired, stranger, kept?.id ?? ""))).toBe("interest-unknown");
    expect(ruleOf(await endInterest(wired, by, kept?.id ?? ""))).toBe("ok");
    const ended = (await account(id)).interests[0]?.endedAt;
    expect(ended).not.toBeNull();
    await endInterest(at(new Date(Date.now() + 60_000)), by, kept?.id ?? "");
    expect((await account(id)).interests[0]?.endedAt).toBe(ended);
    expect(actingAs(await account(id)).interests).toEqual([]);
    const { prisma } = wired.database;
    await expect(prisma.interest.deleteMany({ where: { memberId: id } })).rejects.toThrow(
      /kept as they were/,
    );
    await expect(prisma.interest.updateMany({ where: { memberId: id }, data: { note: "" } })).rejects.toThrow(
      /kept as they were/,
    );
    expect(ruleOf(await declareInterest(wired, { kind: "reader" }, interest))).toBe("sign-in-first");
  });

  it("are found by a part of their names, whatever signs are in it", async () => {
    await wired.members.create({
      name: "Zz_%Quill",
      email: "quill@example.org",
      passwordHash: null,
      about: "",
      at: new Date(),
    });
    const found = async (words: string) =>
      (await wired.members.search(words, 0, 100)).map(({ name }) => name);
    expect(await found("quill")).toEqual(["Zz_%Quill"]);
    expect(await found("_%q")).toEqual(["Zz_%Quill"]);
    expect(await found("_%z")).toEqual([]);
    expect(JSON.stringify(await wired.members.search("quill", 0, 1))).not.toContain("@");
  });

  it("of nobody has the password of who has none", async () => {
    const { email } = await joined();
    await wired.members.update((await wired.members.byEmail(email))?.id ?? "", { passwordHash: null });
    for (const typed of [PASSWORD, "null", "undefined"])
      expect(ruleOf(await tryPassword(email, typed))).toBe("sign-in-wrong");
  });

  it("are sealed in by a secret that is made once, for this user's eyes alone", async () => {
    const secret = wired.secret();
    expect(secret.length).toBeGreaterThanOrEqual(43);
    expect(wired.secret()).toBe(secret);
    const { mode } = await stat(`${wired.environment.dataFolder}/sign-in-secret`);
    expect(mode & 0o777).toBe(0o600);
  });
});
