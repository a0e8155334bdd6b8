import { afterAll, beforeAll, expect, it } from "vitest";
import type { FieldError } from "#core/field-error";
import { type EntryToMake, parseEntry } from "#core/questions/parse-entry";
import type { Proposed } from "#core/questions/question";
import type { Result } from "#core/result";
import { changeQuestion } from "#usecases/change-question";
import { deleteLookUp, forgetExpired } from "#usecases/forget-look-ups";
import { importReferences } from "#usecases/import-references";
import { lookUpMark } from "#usecases/look-up-mark";
import { makeEntry } from "#usecases/make-entry";
import { publishLookUp } from "#usecases/publish-look-up";
import { showLookUp } from "#usecases/show-look-up";
import { showQuestion } from "#usecases/show-question";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const OWNER = "owner";
const publication = {
  published: { title: "A mark of bars", text: "Under a dish, worn on one side.", name: "Ansa" },
  licence: "CC BY 4.0",
  credit: "Ansa",
};
const proposed = (name: string, entry = ""): Proposed => ({
  answer: entry === "" ? { kind: "words", maker: "Rook", mark: name, period: "" } : { kind: "entry", entry },
  reasons: "The bars stand in the same order.",
  basis: "compared photographs",
  name,
});

describeOnBothDatabases("open questions", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    const result = await importFiles(wired, {
      "entries.csv": "key,title,kind\nthree-bars,Three bars,mark\n",
      "photographs.csv":
        "file,entry,shows,region,turn,pixels_per_mm,licence,credit\np/1.webp,three-bars,,,0,,CC BY 4.0,Somebody\n",
      "p/1.webp": await drawMark(1),
    });
    expect(result.ok).toBe(true);
  }, 120_000);
  afterAll(() => wired.end());

  let marks = 100;
  const lookUp = async (days = 30) => {
    const region = { x: 20, y: 20, width: 180, height: 160, turn: 0 };
    const result = await lookUpMark(wired, {
      photographs: [{ bytes: await drawMark(++marks), region, mark: 1 }],
      ownerHash: OWNER,
      days,
    });
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    const [photograph] = result.value.photographs;
    if (!photograph) throw new Error("The look-up keeps no photograph.");
    return { ...photograph, id: result.value.id };
  };
  const publish = async () => {
    const kept = await lookUp();
    const result = await publishLookUp(wired, { lookUp: kept.id, ownerHash: OWNER, publication });
    if (!result.ok || result.value.key === null) throw new Error(JSON.stringify(result));
    return { kept, id: result.value.id, key: result.value.key };
  };
  const take = (id: string, key: string | null, command: Parameters<typeof changeQuestion>[3]) =>
    changeQuestion(wired, id, key, command);
  const show = async (id: string, key: string | null = null) => {
    const view = await showQuestion(wired, id, key);
    if (!view) throw new Error(`There is no question ${id}.`);
    return view;
  };
  const entryNamed = (title: string): EntryToMake => {
    const fields = { kind: "mark", description: "Bars in a row.", period: "1790~/1812", ...publication };
    const parsed = parseEntry({ title, ...fields } as unknown as Record<string, string>);
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
    return parsed.value;
  };
  const make = (id: string, key: string | null, title: string) => {
    const takeIn = (folder: Parameters<typeof importReferences>[1], by: string) =>
      importReferences(wired, folder, { dryRun: false, by });
    return makeEntry({ ...wired, takeIn }, { id, key, entry: entryNamed(title), by: "Ansa" });
  };
  const ruleOf = (result: Result<unknown, FieldError | readonly FieldError[]>) =>
    result.ok ? null : [result.error].flat()[0]?.rule;

  it("publishes a look-up once, with its photograph, frame and terms; only its owner can", async () => {
    const { kept, id } = await publish();
    expect(ruleOf(await publishLookUp(wired, { lookUp: kept.id, ownerHash: "stranger", publication }))).toBe(
      "look-up-unknown",
    );
    expect(await publishLookUp(wired, { lookUp: kept.id, ownerHash: OWNER, publication })).toEqual({
      ok: true,
      value: { id, key: null },
    });
    const view = await show(id);
    expect(view).toMatchObject({ mine: false, question: { state: "open", title: "A mark of bars" } });
    expect(view.kept.photographs).toEqual([
      {
        sha256: kept.sha256,
        width: kept.width,
        height: kept.height,
        region: kept.region,
        licence: "CC BY 4.0",
        credit: "Ansa",
      },
    ]);
    expect(await wired.questions.ofLookUp(kept.id)).toBe(id);
  });

  it("does not publish a look-up whose time is over", async () => {
    const kept = await lookUp(-1);
    expect(ruleOf(await publishLookUp(wired, { lookUp: kept.id, ownerHash: OWNER, publication }))).toBe(
      "look-up-unknown",
    );
  });

  it("knows who asked while signed in without a key, and writes down whose doing each event was", async () => {
    const [asker, other] = await Promise.all(
      ["Ida", "Bram"].map((name) =>
        wired.members.create({
          name,
          email: `${name}-${marks}@example.org`,
          passwordHash: null,
          about: "",
          at: new Date(),
        }),
      ),
    );
    const kept = await lookUp();
    const asked = { lookUp: kept.id, ownerHash: OWNER, publication, member: asker ?? null };
    const published = await publishLookUp(wired, asked);
    const id = published.ok ? published.value.id : "";
    const proposal = { type: "propose", ...proposed("Somebody") } as const;
    await changeQuestion(wired, id, null, proposal, other);
    const accept = { type: "accept", proposal: 1 } as const;
    expect(ruleOf(await changeQuestion(wired, id, null, accept, other))).toBe("asker-only");
    expect(ruleOf(await changeQuestion(wired, id, null, accept))).toBe("asker-only");
    expect((await showQuestion(wired, id, null, asker))?.mine).toBe(true);
    expect((await showQuestion(wired, id, null, other))?.mine).toBe(false);
    expect(ruleOf(await changeQuestion(wired, id, null, accept, asker))).toBe(null);
    const events = await database().prisma.questionEvent.findMany({
      where: { questionId: id },
      orderBy: { number: "asc" },
    });
    expect(events.map(({ type, memberId }) => [type, memberId])).toEqual([
      ["published", asker],
      ["proposed", other],
      ["accepted", asker],
    ]);
  });

  it("keeps of the asker's key only a hash", async () => {
    const { id, key } = await publish();
    const row = await database().prisma.question.findUniqueOrThrow({
      where: { id },
      include: { events: true },
    });
    expect(JSON.stringify(row)).not.toContain(key);
    expect(row.keyHash).toMatch(/^[0-9a-f]{64}$/);
    expect(wired.keys.opens(key, row.keyHash)).toBe(true);
    expect(wired.keys.opens(`${key.slice(0, -1)}_`, row.keyHash)).toBe(key.endsWith("_"));
    expect(wired.keys.opens(row.keyHash, row.keyHash)).toBe(false);
  });

  it("lets anybody propose, and nobody but the asker decide", async () => {
    const { id, key } = await publish();
    const other = await publish();
    expect(await take(id, null, { type: "propose", ...proposed("Bram", "three-bars") })).toMatchObject({
      ok: true,
    });
    expect(await take(id, null, { type: "propose", ...proposed("Bram", "three-bars") })).toMatchObject({
      ok: true,
    });
    expect(ruleOf(await take(id, null, { type: "propose", ...proposed("Bram", "no-such") }))).toBe(
      "entry-not-here",
    );
    for (const wrong of [null, other.key, "x".repeat(43)]) {
      expect(ruleOf(await take(id, wrong, { type: "accept", proposal: 1 }))).toBe("asker-only");
      expect(ruleOf(await take(id, wrong, { type: "withdraw" }))).toBe("asker-only");
      expect(ruleOf(await make(id, wrong, "Bars"))).toBe("asker-only");
    }
    expect(await take(id, key, { type: "accept", proposal: 1 })).toMatchObject({ ok: true });
    const view = await show(id, key);
    expect(view).toMatchObject({ mine: true, question: { state: "answered", accepted: 1 } });
    expect(view.question.proposals).toHaveLength(1);
    expect(view.entries.get("three-bars")?.title).toBe("Three bars");
    expect(ruleOf(await make(id, key, "Bars"))).toBe("answered-by-entry");
  });

  it("keeps every proposal when many come at once, each with a number of its own", async () => {
    const { id } = await publish();
    const names = ["A", "B", "C", "D", "E", "F"].map((letter) => `Proposer ${letter}`);
    const results = await Promise.all(
      names.map((name) => take(id, null, { type: "propose", ...proposed(name) })),
    );
    expect(results.map((result) => result.ok)).toEqual(names.map(() => true));
    const { proposals } = (await show(id)).question;
    expect(proposals.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(proposals.map(({ name }) => name).sort()).toEqual(names);
  });

  it("never changes or drops what happened", async () => {
    const { id } = await publish();
    const where = { questionId_number: { questionId: id, number: 1 } };
    await expect(
      database().prisma.questionEvent.update({ where, data: { type: "withdrawn" } }),
    ).rejects.toThrow(/append-only/);
    await expect(database().prisma.questionEvent.delete({ where })).rejects.toThrow(/append-only/);
  });

  it("outlives its look-up, and its photograph goes when it is withdrawn", async () => {
    const { kept, id, key } = await publish();
    await deleteLookUp(wired, { id: kept.id, ownerHash: OWNER });
    expect(await wired.blobs.get(kept.sha256)).not.toBeNull();
    expect((await show(id)).kept.photographs).toHaveLength(1);
    expect(await take(id, key, { type: "withdraw" })).toMatchObject({ ok: true });
    expect(await wired.blobs.get(kept.sha256)).toBeNull();
    const view = await show(id, key);
    expect(view).toMatchObject({ question: { state: "withdrawn" }, kept: { photographs: [], lookUp: null } });
    expect((await wired.questions.list(0, 100)).map((each) => each.id)).not.toContain(id);
    expect(ruleOf(await take(id, null, { type: "propose", ...proposed("Bram") }))).toBe("question-withdrawn");
  });

  it("leaves the photograph with a look-up that is still kept, and that may be published anew", async () => {
    const { kept, id, key } = await publish();
    await take(id, key, { type: "withdraw" });
    expect(await wired.blobs.get(kept.sha256)).not.toBeNull();
    expect(await showLookUp(wired, kept.id)).not.toBeNull();
    const again = await publishLookUp(wired, { lookUp: kept.id, ownerHash: OWNER, publication });
    expect(again).toMatchObject({ ok: true, value: { key: expect.stringMatching(/./) } });
    const later = { now: () => new Date(Date.now() + 31 * 24 * 60 * 60 * 1000) };
    await forgetExpired({ ...wired, clock: later });
    expect(await wired.blobs.get(kept.sha256)).not.toBeNull();
  });

  it("becomes an entry under review with its photograph, once, and each names the other", async () => {
    const { kept, id, key } = await publish();
    await take(id, null, { type: "propose", ...proposed("Bram") });
    await take(id, key, { type: "accept", proposal: 1 });
    expect(await make(id, key, "Three bars")).toEqual({ ok: true, value: "three-bars-2" });
    expect(ruleOf(await make(id, key, "Three bars"))).toBe("entry-made-already");
    const entry = await wired.entries.bySlug("three-bars-2");
    expect(entry).toMatchObject({
      summary: { state: "under review", period: { edtf: "1790~/1812" } },
      revision: { number: 1, createdBy: "Ansa" },
      photographs: [{ sha256: kept.sha256, region: kept.region, licence: "CC BY 4.0", credit: "Ansa" }],
    });
    expect((await wired.questions.ofEntry("three-bars-2"))?.id).toBe(id);
    const view = await show(id);
    expect(view.question).toMatchObject({ state: "answered", entry: "three-bars-2" });
    expect(view.entries.get("three-bars-2")?.title).toBe("Three bars");
    // The photograph is the entry's too now, and is found when it is looked up.
    await take(id, key, { type: "withdraw" });
    expect(await wired.blobs.get(kept.sha256)).not.toBeNull();
    expect(await wired.questions.ofEntry("three-bars-2")).toBeNull();
    const bytes = await wired.blobs.get(kept.sha256);
    const photographs = [{ bytes: bytes ?? new Uint8Array(), region: kept.region, mark: 1 }];
    const asked = { photographs, ownerHash: OWNER, days: 1 };
    const found = await lookUpMark(wired, asked);
    const shown = found.ok ? await showLookUp(wired, found.value.id) : null;
    expect(shown?.view.matches[0]?.entry.slug).toBe("three-bars-2");
  });

  it("lists open ones before answered ones, the newest first", async () => {
    const first = await publish();
    const second = await publish();
    await take(first.id, null, { type: "propose", ...proposed("Bram") });
    const before = (await wired.questions.list(0, 100)).map((each) => each.id);
    expect(before.indexOf(second.id)).toBeLessThan(before.indexOf(first.id));
    await take(second.id, null, { type: "propose", ...proposed("Bram") });
    await take(second.id, second.key, { type: "accept", proposal: 1 });
    const after = (await wired.questions.list(0, 100)).map((each) => each.id);
    expect(after.indexOf(first.id)).toBeLessThan(after.indexOf(second.id));
    expect((await wired.questions.list(1, 2)).map((each) => each.id)).toEqual(after.slice(1, 3));
  });
});
