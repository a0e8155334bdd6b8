import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createDemoMembers } from "#adapters/demo-members";
import { openImportFolder } from "#adapters/import-folder";
import type { Account } from "#core/members/account";
import { DEFAULT_POLICY } from "#core/review/policy";
import { weighVotes } from "#core/review/weigh-votes";
import { importReferences } from "#usecases/import-references";
import { verifyTrails } from "#usecases/verify-trails";
import { readDemoStories, submittedAt, tellDemoHistories } from "../../scripts/demo-histories.ts";
import { takeDemoMembersIn } from "../../scripts/demo-members.ts";
import { FATES } from "../../scripts/histories/story.ts";
import { evening, morning } from "../../scripts/histories/waking-hours.ts";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, wireScratch } from "../setup/scratch-reference.ts";

const DEMO = fileURLToPath(new URL("../../seed/demo", import.meta.url));
const NOW = new Date("2026-11-27T12:00:00.000Z");
const HOUR = 3_600_000;
const ENTRIES = 20;
const COUNTS = Object.fromEntries(FATES.map((fate) => [fate, fate === "verified" ? 0 : 1]));
const STATES = {
  verified: "verified",
  "under review": "under review",
  disputed: "disputed",
  dismissed: "verified",
  "upheld in part": "verified",
  appealed: "verified",
  "appeal waiting": "verified",
  "not accepted": "not accepted",
  superseded: "superseded",
  withdrawn: "withdrawn",
  "locked for a week": "verified",
} as const;

async function writeFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "countermark-histories-"));
  await mkdir(join(folder, "p"));
  const slugs = Array.from({ length: ENTRIES }, (_, i) => `mark-${i + 1}`);
  const fields = ["metalwork", "toys", "ceramics", "textiles"];
  const entries = slugs.map(
    (slug, i) =>
      `${slug},Mark ${i + 1},mark,${fields[i % 4]},stamped,pewter,A ${i} B,base,shield,1800/1820,Seen from above.,${slugs[i + 1] ?? ""}`,
  );
  const photographs = slugs.flatMap((slug) =>
    [1, 2].map((n) => `p/${n}.webp,${slug},CC BY 4.0,Somebody,${n}`),
  );
  const columns =
    "key,title,kind,field,technique,material,words,place_on_object,frame,period,description,followed_by";
  await writeFile(join(folder, "entries.csv"), [columns, ...entries].join("\n"));
  await writeFile(
    join(folder, "photographs.csv"),
    ["file,entry,licence,credit,impression", ...photographs].join("\n"),
  );
  for (const n of [1, 2]) await writeFile(join(folder, `p/${n}.webp`), await drawMark(n));
  return folder;
}

describeOnBothDatabases("histories of a demo", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  let folder: string;
  let stories: Awaited<ReturnType<typeof readDemoStories>>;
  let told: number;
  beforeAll(async () => {
    const scratch = await wireScratch(database());
    wired = { ...scratch, demoMembers: createDemoMembers(DEMO), clock: { now: () => NOW } };
    folder = await writeFolder();
    await takeDemoMembersIn(wired);
    stories = await readDemoStories(wired, folder, COUNTS);
    const times = submittedAt(stories, NOW);
    const taken = await importReferences(
      { ...wired, policy: DEFAULT_POLICY },
      await openImportFolder(folder),
      {
        dryRun: false,
        by: "demo",
        times,
      },
    );
    expect(taken).toMatchObject({ ok: true });
    told = await tellDemoHistories(wired, stories);
  }, 120_000);
  afterAll(async () => {
    await rm(folder, { recursive: true, force: true });
    await wired.end();
  });

  const historyOf = async (slug: string) => {
    const found = await wired.trails.history(slug);
    if (!found) throw new Error(`There is no entry ${slug}.`);
    const links = await wired.trails.links(`entry:${found.id}`);
    return { ...found.history, links };
  };

  it("leaves each entry where its story does", async () => {
    expect(new Set(stories.map(({ fate }) => fate))).toEqual(new Set(FATES));
    for (const { entry, fate } of stories) {
      const { state, replacedBy } = await historyOf(entry);
      if (fate === "sent back") expect(["verified", "under review"]).toContain(state);
      else expect(`${entry}: ${fate}: ${state}`).toBe(`${entry}: ${fate}: ${STATES[fate]}`);
      expect(replacedBy !== null).toBe(fate === "superseded");
    }
    expect(told).toBe(stories.filter(({ steps }) => steps.length > 0).length);
  });

  it("tells times in order, none in the future and none long ago", async () => {
    for (const { entry } of stories) {
      const { links } = await historyOf(entry);
      const times = links.map(({ at }) => Date.parse(at));
      expect(times).toEqual([...times].sort((a, b) => a - b));
      expect(Math.max(...times)).toBeLessThanOrEqual(NOW.getTime());
      expect(Math.min(...times)).toBeGreaterThan(NOW.getTime() - 2 * 366 * 24 * HOUR);
    }
  });

  it("verifies by three votes that count, and says no sentence of an entry twice", async () => {
    for (const { entry, fate } of stories) {
      const history = await historyOf(entry);
      for (const review of history.reviews) {
        const said = review.votes.map(({ reason }) => reason);
        expect(new Set(said).size).toBe(said.length);
        if (review.end?.is !== "verified") continue;
        expect(
          weighVotes(history, review).filter(({ notCounted }) => notCounted === null).length,
        ).toBeGreaterThan(2);
      }
      if (fate === "appealed")
        expect(history.challenges[0]?.appeal).toMatchObject({ outcome: "stands", votes: { length: 3 } });
    }
  });

  it("passes verify-trail", async () => {
    expect(await verifyTrails(wired)).toMatchObject({ trails: ENTRIES + 1, faults: [] });
  });

  it("changes nothing the second time", async () => {
    const heads = () => Promise.all(stories.map(async ({ entry }) => (await historyOf(entry)).links.length));
    const before = await heads();
    const again = await readDemoStories(wired, folder, COUNTS);
    expect(await tellDemoHistories(wired, again)).toBe(0);
    expect(await heads()).toEqual(before);
  });
});

describe("stories of the demo", () => {
  const read = async () => {
    const members = await createDemoMembers(DEMO).all();
    const find = async (id: string): Promise<Account | null> => {
      const member = members.find((each) => each.id === id);
      if (!member) return null;
      const { roles, fields, interests, name, about, email, joined } = member;
      const declared = interests.map((each) => ({ ...each, id: "", declaredAt: joined, endedAt: null }));
      return {
        ...{ id, name, about, email, hasPassword: false, createdAt: joined, suspendedAt: null },
        ...{ isModerator: roles.includes("moderator"), isAdministrator: roles.includes("administrator") },
        ...{ fields, interests: declared },
      };
    };
    return readDemoStories({ demoMembers: { all: async () => members }, members: { find } }, DEMO);
  };

  it("are many of each kind, and the same each time", async () => {
    const stories = await read();
    const counts = new Map(FATES.map((fate) => [fate, stories.filter((each) => each.fate === fate).length]));
    console.log(Object.fromEntries(counts));
    expect(Object.fromEntries(counts)).toMatchObject({
      "under review": 35,
      disputed: 12,
      "not accepted": 12,
      superseded: 6,
      withdrawn: 5,
      "locked for a week": 1,
    });
    expect(counts.get("verified")).toBeGreaterThanOrEqual(130);
    const asText = (all: typeof stories) =>
      JSON.stringify(
        all.map(({ steps, ...story }) => [
          story,
          steps.map((step) => (step.is === "command" ? step.give("", "") : step)),
        ]),
      );
    expect(asText(await read())).toBe(asText(stories));
  });

  it("use sixty sentences or more, and none too often", async () => {
    const reasons = (await read()).flatMap(({ steps }) =>
      steps.flatMap((step) => {
        const command = step.is === "command" ? step.give("", "") : null;
        return command?.type === "vote" ? [command.reason] : [];
      }),
    );
    const distinct = new Set(reasons);
    expect(distinct.size).toBeGreaterThan(200);
    expect(reasons.every((reason) => !/[{}]|undefined/.test(reason))).toBe(true);
  });
});

describe("waking hours", () => {
  it("keep the order of times, and come no earlier in the morning and no later in the evening", () => {
    const start = NOW.getTime();
    const times = Array.from({ length: 400 }, (_, i) => start + i * 0.37 * HOUR);
    const shifted = times.map((time) => morning(time).getTime());
    expect(shifted).toEqual([...shifted].sort((a, b) => a - b));
    for (const [i, time] of times.entries()) {
      expect(shifted[i]).toBeGreaterThanOrEqual(time);
      expect(evening(time).getTime()).toBeLessThanOrEqual(time);
      expect(time - evening(time).getTime()).toBeLessThan(14 * HOUR);
      for (const at of [morning(time), evening(time)]) {
        const hour = at.getUTCHours() + at.getUTCMinutes() / 60;
        expect(hour).toBeGreaterThanOrEqual(6.5);
        expect(hour).toBeLessThan(21);
      }
    }
  });
});
