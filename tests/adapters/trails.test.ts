import fc from "fast-check";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { FieldError } from "#core/field-error";
import type { ActingMember, Actor } from "#core/members/member";
import type { Result } from "#core/result";
import { castVote } from "#usecases/cast-vote";
import { closeReviews } from "#usecases/close-reviews";
import { settleTrails } from "#usecases/settle-trails";
import { type ReadOpinions, tellAgreement } from "#usecases/tell-agreement";
import { verifyTrails } from "#usecases/verify-trails";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { memberNamed, reviewerNamed } from "../setup/review-members.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const SLUGS = ["anchor", "bars", "crown", "dolphin", "eagle", "fish"];
const REASON = "The strokes stand as on the plate that I have here.";
const HOUR = 3_600_000;

describeOnBothDatabases("the trail", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  let files: Record<string, string | Uint8Array>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    const entries = SLUGS.map((slug) => `${slug},${slug} mark,mark,metalwork,Seen from above.`);
    const photographs = SLUGS.flatMap((slug) =>
      [1, 2].map((n) => `p/${slug}${n}.webp,${slug},,,0,,CC BY 4.0,Somebody,${n}`),
    );
    files = {
      "entries.csv": ["key,title,kind,field,description", ...entries].join("\n"),
      "photographs.csv": [
        "file,entry,shows,region,turn,pixels_per_mm,licence,credit,impression",
        ...photographs,
      ].join("\n"),
    };
    for (const [i, slug] of SLUGS.entries())
      for (const n of [1, 2]) files[`p/${slug}${n}.webp`] = await drawMark(10 * i + n);
    expect(await importFiles(wired, files)).toMatchObject({ ok: true });
  }, 120_000);
  afterAll(() => wired.end());

  const history = async (slug: string) => {
    const found = await wired.trails.history(slug);
    if (!found) throw new Error(`There is no entry ${slug}.`);
    return { trail: `entry:${found.id}`, ...found.history };
  };
  const vote = async (by: Actor, slug: string, choice: "support" | "oppose" = "support", at = new Date()) => {
    const { revisions } = await history(slug);
    const needs = { ...wired, clock: { now: () => at } };
    const basis = "compared photographs";
    return castVote(needs, by, slug, { revision: revisions.at(-1)?.id ?? "", choice, reason: REASON, basis });
  };
  const ruleOf = (result: Result<unknown, FieldError>) =>
    result.ok ? null : `${result.error.field} ${result.error.rule}`;
  const check = async (entry: string | null = null) => {
    const verified = await verifyTrails(wired, entry);
    if (!verified) throw new Error(`There is no entry ${entry}.`);
    return verified;
  };
  const later = (hours: number) => new Date(Date.now() + hours * HOUR);

  it("begins with what the import recorded and put forward", async () => {
    const { trail, state } = await history("anchor");
    const links = await wired.trails.links(trail);
    expect(links.map(({ number, type, by }) => [number, type, by])).toEqual([
      [1, "revision recorded", { id: null, name: "test" }],
      [2, "submitted", { id: null, name: "test" }],
    ]);
    expect(links.map(({ previous }) => previous)).toEqual([null, links[0]?.hash]);
    expect(state).toBe("under review");
    expect(await check()).toEqual({ trails: 6, links: 12, faults: [] });
  });

  it("takes nothing from the same import a second time", async () => {
    await importFiles(wired, files);
    expect(await check()).toMatchObject({ trails: 6, links: 12 });
  });

  it.each([
    ["update", `UPDATE trail_links SET by_name = 'forger'`],
    ["delete", "DELETE FROM trail_links"],
    ["truncate", "TRUNCATE trail_links"],
  ])("refuses to %s", async (_, statement) => {
    await expect(database().prisma.$executeRawUnsafe(statement)).rejects.toThrow(/append-only/);
    expect(await check()).toMatchObject({ links: 12, faults: [] });
  });

  it("takes no two links of one number, and none after the same hash", async () => {
    const { trail } = await history("anchor");
    const [first, second] = await wired.trails.links(trail);
    const add = (number: number, previousHash: string | null) =>
      database().prisma.trailLink.create({
        data: {
          trail,
          number,
          type: "locked",
          at: new Date(),
          byName: "forger",
          payload: "{}",
          previousHash,
          hash: "0".repeat(64),
        },
      });
    await expect(add(2, second?.hash ?? null)).rejects.toMatchObject({ code: "P2002" });
    await expect(add(3, first?.hash ?? null)).rejects.toMatchObject({ code: "P2002" });
  });

  it("keeps one vote and nothing of its repetition", async () => {
    const voter = reviewerNamed("Ansa Hollin");
    await vote(voter, "anchor");
    const before = (await wired.trails.links((await history("anchor")).trail)).length;
    expect(ruleOf(await vote(voter, "anchor"))).toBeNull();
    expect(await wired.trails.links((await history("anchor")).trail)).toHaveLength(before);
    await vote(voter, "anchor", "oppose");
    const { reviews } = await history("anchor");
    expect(reviews[0]?.votes.map(({ choice }) => choice)).toEqual(["support", "oppose"]);
  });

  it("refuses who may not, in words, and records nothing", async () => {
    const { trail } = await history("bars");
    const before = (await wired.trails.links(trail)).length;
    const suspended: ActingMember = { ...reviewerNamed("Odd Ferrer"), suspended: true };
    expect(ruleOf(await vote({ kind: "reader" }, "bars"))).toBe("member sign-in-first");
    expect(ruleOf(await vote(memberNamed("Bram Tiller"), "bars"))).toBe("member role-needed");
    expect(ruleOf(await vote(suspended, "bars"))).toBe("member member-suspended");
    const said = { revision: "none", choice: "support", reason: REASON, basis: "other" } as const;
    expect(ruleOf(await castVote(wired, reviewerNamed("Ansa Hollin"), "nowhere", said))).toBe(
      "entry entry-not-here",
    );
    expect(await wired.trails.links(trail)).toHaveLength(before);
  });

  it("keeps 50 votes cast at once, in one unbroken chain", async () => {
    const voters = Array.from({ length: 50 }, (_, i) => reviewerNamed(`Reviewer ${i + 1}`));
    const results = await Promise.all(voters.map((by) => vote(by, "bars")));
    expect(results.filter(({ ok }) => !ok)).toEqual([]);
    const { trail, reviews } = await history("bars");
    expect(new Set(reviews[0]?.votes.map(({ voter }) => voter.id))).toEqual(
      new Set(voters.map(({ id }) => id)),
    );
    expect(reviews[0]?.votes).toHaveLength(50);
    const links = await wired.trails.links(trail);
    expect(links.map(({ number }) => number)).toEqual(links.map((_, i) => i + 1));
    expect(links).toHaveLength(52);
    expect((await check("bars")).faults).toEqual([]);
  }, 120_000);

  it("closes a review when it is over, once, and says so to a vote that comes then", async () => {
    for (const name of ["Ada", "Ben", "Cleo"]) await vote(reviewerNamed(name), "crown");
    expect(await closeReviews({ ...wired, clock: { now: () => later(71) } })).not.toContain("crown");
    const late = await vote(reviewerNamed("Dora"), "crown", "oppose", later(73));
    expect(ruleOf(late)).toBe("review review-over");
    const { state, verified, revisions, reviews } = await history("crown");
    expect([state, verified]).toEqual(["verified", revisions[0]?.id]);
    expect(reviews[0]?.votes).toHaveLength(3);
    expect(await closeReviews({ ...wired, clock: { now: () => later(73) } })).toEqual(["bars"]);
    expect(await closeReviews({ ...wired, clock: { now: () => later(73) } })).toEqual([]);
    expect((await wired.entries.bySlug("bars"))?.summary.state).toBe("verified");
    expect((await check()).faults).toEqual([]);
  });

  it("lists what waits for votes, by field and age, and who has voted", async () => {
    const reader = reviewerNamed("Edda");
    await vote(reader, "dolphin");
    const asked = { fields: ["metalwork" as const], member: reader.id, after: 0, limit: 10 };
    const waiting = await wired.reviewLists.waiting(asked);
    expect(waiting.map(({ slug, voted, voters }) => [slug, voted, voters])).toEqual(
      expect.arrayContaining([
        ["dolphin", true, 1],
        ["eagle", false, 0],
      ]),
    );
    expect(waiting.map(({ slug }) => slug)).not.toContain("crown");
    expect(await wired.reviewLists.waiting({ ...asked, fields: ["toys"] })).toEqual([]);
    const [own] = await wired.reviewLists.ofMember(reader.id, ["vote cast"], 0, 10);
    expect(own).toMatchObject({ entry: { slug: "dolphin" }, link: { payload: { choice: "support" } } });
    const voted = await wired.reviewLists.votedOn(10);
    const histories = await wired.reviewLists.histories(voted.map(({ id }) => id));
    expect(
      [...histories.values()].map(({ reviews }) => reviews.flatMap(({ votes }) => votes).length).sort(),
    ).toEqual([1, 2, 3, 50].sort());
    expect(await wired.reviewLists.votedOn(1)).toHaveLength(1);
  });

  it("reads no trail again to tell agreement but one that has grown", async () => {
    const known: ReadOpinions = new Map();
    const read: string[] = [];
    const { votedOn } = wired.reviewLists;
    const histories = (ids: readonly string[]) => {
      read.push(...ids);
      return wired.reviewLists.histories(ids);
    };
    const told = () => tellAgreement({ votedOn, histories }, known);
    const first = await told();
    expect(first).toMatchObject([{ field: "metalwork", reviews: 2, opinions: 53 }]);
    expect(read).toHaveLength(4);
    expect(await told()).toEqual(first);
    expect(read).toHaveLength(4);
    await vote(reviewerNamed("Frida"), "dolphin", "oppose");
    expect(await told()).toMatchObject([{ field: "metalwork", reviews: 3, opinions: 55 }]);
    expect(read).toHaveLength(5);
  });

  it("finds any byte of any payload that was altered behind its back", async () => {
    const { prisma } = database();
    const links = await prisma.trailLink.findMany({ orderBy: [{ trail: "asc" }, { number: "asc" }] });
    await prisma.$executeRaw`ALTER TABLE trail_links DISABLE TRIGGER trail_links_are_immutable`;
    const rows = await prisma.entry.findMany({ select: { id: true, slug: true } });
    const slugs = new Map(rows.map(({ id, slug }) => [`entry:${id}`, slug]));
    const set = (trail: string, number: number, payload: string) =>
      prisma.trailLink.update({ where: { trail_number: { trail, number } }, data: { payload } });
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), fc.integer({ min: 32, max: 126 }), async (which, where, code) => {
        const link = links[which % links.length];
        if (!link) return;
        const { trail, number, payload } = link;
        const at = where % payload.length;
        const altered = payload.slice(0, at) + String.fromCharCode(code) + payload.slice(at + 1);
        fc.pre(altered !== payload);
        await set(trail, number, altered);
        const { faults } = await check(slugs.get(trail));
        await set(trail, number, payload);
        expect(faults).toEqual([{ trail, broken: { number, why: "wrong hash" }, differs: [] }]);
      }),
      { numRuns: 60 },
    );
    await prisma.$executeRaw`ALTER TABLE trail_links ENABLE TRIGGER trail_links_are_immutable`;
    expect((await check()).faults).toEqual([]);
  }, 120_000);

  it("finds a link taken out, a last link cut off, a row and a revision that say otherwise", async () => {
    const { prisma } = database();
    const { trail, id } = {
      ...(await history("eagle")),
      id: (await wired.trails.history("eagle"))?.id ?? "",
    };
    await prisma.$executeRaw`ALTER TABLE trail_links DISABLE TRIGGER trail_links_are_immutable`;
    const [first, last] = await prisma.trailLink.findMany({ where: { trail }, orderBy: { number: "asc" } });
    if (!first || !last) throw new Error("The trail has two links.");
    const without = async (row: typeof first) => {
      await prisma.trailLink.delete({ where: { trail_number: { trail, number: row.number } } });
      const { faults } = await check("eagle");
      await prisma.trailLink.create({ data: row });
      return faults;
    };
    expect(await without(first)).toEqual([{ trail, broken: { number: 1, why: "gap" }, differs: [] }]);
    expect((await without(last))[0]?.differs).toContain("eagle: state");
    await prisma.$executeRaw`ALTER TABLE trail_links ENABLE TRIGGER trail_links_are_immutable`;

    await prisma.entry.update({ where: { id }, data: { state: "verified" } });
    expect((await check()).faults).toEqual([{ trail, broken: null, differs: ["eagle: state"] }]);
    await prisma.entry.update({ where: { id }, data: { state: "under review" } });

    await prisma.$executeRaw`ALTER TABLE revisions DISABLE TRIGGER revisions_are_immutable`;
    await prisma.$executeRaw`UPDATE revisions SET content = jsonb_set(content, '{title}', '"forged"') WHERE entry_id = ${id}::uuid`;
    expect((await check()).faults).toEqual([
      { trail, broken: null, differs: ["eagle: revision 1 was changed"] },
    ]);
    await prisma.$executeRaw`UPDATE revisions SET content = jsonb_set(content, '{title}', '"eagle mark"') WHERE entry_id = ${id}::uuid`;
    await prisma.$executeRaw`ALTER TABLE revisions ENABLE TRIGGER revisions_are_immutable`;
    expect((await check()).faults).toEqual([]);
  });

  it("brings entries recorded before there were trails onto one, once", async () => {
    const { prisma } = database();
    const { trail, revisions } = await history("fish");
    await prisma.$executeRaw`ALTER TABLE trail_links DISABLE TRIGGER trail_links_are_immutable`;
    await prisma.trailLink.deleteMany({ where: { trail } });
    await prisma.$executeRaw`ALTER TABLE trail_links ENABLE TRIGGER trail_links_are_immutable`;
    expect((await check()).faults).toEqual([
      { trail: "fish", broken: null, differs: ["fish: it has no trail"] },
    ]);
    expect(await settleTrails(wired)).toBe(1);
    expect(await settleTrails(wired)).toBe(0);
    const settled = await history("fish");
    expect(settled.revisions).toEqual(revisions);
    expect(settled.state).toBe("under review");
    expect((await check()).faults).toEqual([]);
  });

  it("keeps acts that concern no entry in a trail of their own", async () => {
    const by = { id: null, name: "somebody" };
    const at = new Date().toISOString();
    const added = Array.from({ length: 8 }, (_, i) => ({
      type: "member suspended",
      at,
      by,
      member: `m${i}`,
    }));
    await Promise.all(added.map((event) => wired.trails.append("members", [event])));
    const links = await wired.trails.links("members");
    expect(links.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect((await check()).faults).toEqual([]);
    const log = await wired.reviewLists.moderation(0, 10);
    expect(log.map(({ link, entry }) => [link.type, entry])).toEqual(added.map(({ type }) => [type, null]));
  });
});
