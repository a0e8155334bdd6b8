import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { MOST_DRAFT_PHOTOGRAPHS } from "#core/drafts/draft";
import { ok } from "#core/result";
import { addDraftPhotograph } from "#usecases/add-draft-photograph";
import { dropDraft, dropDraftPhotograph } from "#usecases/drop-draft";
import { findAlike } from "#usecases/find-alike";
import { chooseModel } from "#usecases/look-up-mark";
import { findCoAuthors } from "#usecases/members/find-co-authors";
import type { WrittenRevision } from "#usecases/ports/review";
import { startDraft } from "#usecases/start-draft";
import { submitDraft } from "#usecases/submit-draft";
import { weighMeanwhile } from "#usecases/weigh-meanwhile";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const [ANSA, BRAM] = [randomUUID(), randomUUID()];
const PHOTOGRAPHS = "file,entry,licence,credit,impression\np/1.webp,three-bars,CC BY 4.0,Somebody,1\n";

describeOnBothDatabases("drafts", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  const importEntry = async (title: string, description = "") => {
    const result = await importFiles(wired, {
      "entries.csv": `key,title,kind,field,citations,description\nthree-bars,"${title}",mark,metalwork,book | M. Oldacre | Touches | 1931 | p. 3,${description}\n`,
      "photographs.csv": PHOTOGRAPHS,
      "p/1.webp": await drawMark(1),
    });
    expect(result).toMatchObject({ ok: true });
  };
  beforeAll(async () => {
    wired = await wireScratch(database());
    await importEntry("Three bars");
  }, 120_000);
  afterAll(() => wired.end());

  const start = async (owner: string, from: Parameters<typeof startDraft>[2] = null) => {
    const started = await startDraft(wired, owner, from);
    if (!started.ok) throw new Error(JSON.stringify(started.error));
    return started.value;
  };
  const find = async (id: string, owner = ANSA) => {
    const draft = await wired.drafts.find(id, owner);
    if (!draft) throw new Error(`There is no draft ${id}.`);
    return draft;
  };
  const upload = async (id: string, seed: number, owner = ANSA) =>
    addDraftPhotograph(wired, { id, owner, bytes: await drawMark(seed) });

  it("are their owner's alone", async () => {
    const id = await start(ANSA);
    expect(await wired.drafts.find(id, BRAM)).toBeNull();
    expect(await wired.drafts.find(id, "no member")).toBeNull();
    expect(await wired.drafts.save(id, BRAM, 1, { typed: { title: "Mine now" } })).toBeNull();
    expect(await upload(id, 7, BRAM)).toMatchObject({ error: { rule: "draft-unknown" } });
    expect(await dropDraft(wired, id, BRAM)).toBe(false);
    expect((await wired.drafts.list(BRAM, 9)).length).toBe(0);
    expect(await find(id)).toMatchObject({ typed: {}, version: 1, photographs: [] });
  });

  it("are saved once for each version, however many save at once", async () => {
    const id = await start(ANSA);
    const saves = await Promise.all(
      Array.from({ length: 8 }, (_, i) => wired.drafts.save(id, ANSA, 1, { typed: { title: `Title ${i}` } })),
    );
    const saved = saves.filter((each) => each !== null);
    expect(saved).toHaveLength(1);
    expect(await find(id)).toMatchObject({ typed: saved[0]?.typed, version: 2 });
  });

  it("keep all photographs that come at once, none twice, and no more than they may", async () => {
    const id = await start(ANSA);
    const [first, again] = [await upload(id, 20), await upload(id, 20)];
    expect(first).toMatchObject({ ok: true });
    expect(again).toMatchObject({ error: { field: "photograph", rule: "photograph-twice" } });
    const many = await Promise.all(
      Array.from({ length: MOST_DRAFT_PHOTOGRAPHS + 2 }, (_, i) => upload(id, 30 + i)),
    );
    expect(many.filter(({ ok }) => ok)).toHaveLength(MOST_DRAFT_PHOTOGRAPHS - 1);
    expect(many.find(({ ok }) => !ok)).toMatchObject({ error: { rule: "draft-photographs-most" } });
    expect((await find(id)).photographs).toHaveLength(MOST_DRAFT_PHOTOGRAPHS);
  }, 60_000);

  it("move a photograph by a place, and no further than the ends", async () => {
    const id = await start(ANSA);
    const taken = await Promise.all([70, 71, 72].map((seed) => upload(id, seed)));
    expect(taken.every(({ ok }) => ok)).toBe(true);
    const order = async () => (await find(id)).photographs.map(({ sha256 }) => sha256);
    const [a = "", b = "", c = ""] = await order();
    await wired.drafts.movePhotograph(id, ANSA, c, "first");
    expect(await order()).toEqual([a, c, b]);
    await wired.drafts.movePhotograph(id, ANSA, a, "last");
    expect(await order()).toEqual([c, a, b]);
    for (const [which, towards] of [
      [c, "first"],
      [b, "last"],
      ["none", "first"],
    ] as const)
      await wired.drafts.movePhotograph(id, ANSA, which, towards);
    await wired.drafts.movePhotograph(id, BRAM, c, "last");
    expect(await order()).toEqual([c, a, b]);
  });

  it("name co-authors by name or by the address of their page", async () => {
    const member = async (name: string) => {
      const email = `${crypto.randomUUID()}@example.org`;
      return (
        (await wired.members.create({ name, email, passwordHash: null, about: "", at: new Date() })) ?? ""
      );
    };
    const [carla, dora, twin] = [
      await member("Carla Pryde"),
      await member("Dora Kemp"),
      await member("Dora Kemp"),
    ];
    expect(
      await findCoAuthors(wired.members, ["carla pryde", `https://host.example/members/${dora}`]),
    ).toEqual({
      ok: true,
      value: [carla, dora],
    });
    expect(twin).not.toBe(dora);
    expect(
      await findCoAuthors(wired.members, ["Dora Kemp", "Carla", `/members/${randomUUID()}`]),
    ).toMatchObject({
      error: [
        { field: "co_authors", rule: "co-author-ambiguous", params: { count: 2 } },
        { rule: "co-author-unknown", received: "Carla" },
        { rule: "co-author-unknown" },
      ],
    });
  });

  it("store nothing of what is refused, and let an image go with them", async () => {
    const id = await start(ANSA);
    const text = new TextEncoder().encode("no image at all");
    expect(await addDraftPhotograph(wired, { id, owner: ANSA, bytes: text })).toMatchObject({
      error: { field: "photograph", rule: "image-type" },
    });
    expect((await find(id)).photographs).toEqual([]);
    const [one, two] = [await upload(id, 60), await upload(id, 61)];
    if (!one.ok || !two.ok) throw new Error("They were not taken.");
    expect(await wired.blobs.get(one.value)).not.toBeNull();
    expect(await dropDraftPhotograph(wired, { id, owner: ANSA, sha256: one.value })).toBe(true);
    expect(await wired.blobs.get(one.value)).toBeNull();
    expect(await dropDraft(wired, id, ANSA)).toBe(true);
    expect(await wired.blobs.get(two.value)).toBeNull();
    expect(await wired.drafts.find(id, ANSA)).toBeNull();
  });

  it("find the entry that their photograph may double", async () => {
    const id = await start(ANSA);
    await upload(id, 1);
    const photographs = (await find(id)).photographs.map(({ sha256, width, height }) => ({
      sha256,
      region: { x: 0, y: 0, width, height, turn: 0 },
    }));
    const needs = { ...wired, chosen: () => chooseModel(wired) };
    expect(await findAlike(needs, photographs, null)).toMatchObject({
      value: [{ entry: { slug: "three-bars" }, likeness: "very close" }],
    });
    expect(await findAlike(needs, photographs, "three-bars")).toEqual(ok([]));
  });

  describe("of an entry that is there", () => {
    it("begin with what it says, and find out what came meanwhile", async () => {
      const id = await start(ANSA, { entry: "three-bars", number: 1 });
      const draft = await find(id);
      expect(draft.typed).toMatchObject({
        title: "Three bars",
        field: "metalwork",
        "citation-1-author": "M. Oldacre",
      });
      expect(await weighMeanwhile(wired.revisions, draft)).toBeNull();
      const mine = { ...draft.typed, title: "Three bars, mine", words: "III" };
      await wired.drafts.save(id, ANSA, 1, { typed: mine });
      await importEntry("Three bars, theirs", "Bars.");
      const meanwhile = await weighMeanwhile(wired.revisions, await find(id));
      expect(meanwhile).toMatchObject({
        newest: { number: 2, parents: [1] },
        merged: { title: "Three bars, mine", words: "III", description: "Bars." },
        conflicts: [
          {
            group: "title",
            base: { title: "Three bars" },
            mine: { title: "Three bars, mine" },
            theirs: { title: "Three bars, theirs" },
          },
        ],
      });
    });

    it("take it back to an older revision, knowing the newest", async () => {
      const draft = await find(await start(ANSA, { entry: "three-bars", number: 1 }));
      expect(draft.typed.title).toBe("Three bars");
      expect(draft.parents).toHaveLength(2);
      expect(await weighMeanwhile(wired.revisions, draft)).toBeNull();
      expect(await startDraft(wired, ANSA, { entry: "three-bars", number: 9 })).toMatchObject({
        error: { rule: "revision-unknown" },
      });
    });
  });

  it("are submitted once, when they have everything", async () => {
    const id = await start(ANSA);
    const given: WrittenRevision[] = [];
    const submit = async (revision: WrittenRevision) => {
      given.push(revision);
      return ok({ slug: "four-bars", number: 1 });
    };
    const send = () => submitDraft({ ...wired, submit }, { id, owner: ANSA, by: "Ansa" });
    expect(await send()).toMatchObject({ ok: false });
    await upload(id, 70);
    const [photograph] = (await find(id)).photographs;
    const own = `photograph-${photograph?.sha256.slice(0, 16)}`;
    const typed = {
      title: "Four bars",
      kind: "mark",
      field: "metalwork",
      description: "Four bars.",
      variant_of: "three-bars nobody",
      [`${own}-credit`]: "Ansa",
      [`${own}-licence`]: "CC0-1.0",
    };
    const had = await wired.drafts.save(id, ANSA, 1, { typed });
    expect(await send()).toMatchObject({ error: [{ field: "variant_of", rule: "entry-not-here" }] });
    await wired.drafts.save(id, ANSA, had?.version ?? 0, { typed: { ...typed, variant_of: "three-bars" } });
    expect(await send()).toEqual(ok({ slug: "four-bars", number: 1 }));
    expect(await send()).toEqual(ok({ slug: "four-bars", number: 1 }));
    expect(given).toMatchObject([
      { entry: null, content: { title: "Four bars" }, photographs: [{ credit: "Ansa" }], parents: [] },
    ]);
    expect(await wired.drafts.save(id, ANSA, 3, { typed })).toBeNull();
  });
});
