import sharp from "sharp";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createNearest } from "#adapters/nearest";
import { deleteLookUp, forgetExpired } from "#usecases/forget-look-ups";
import { keepLookUp } from "#usecases/keep-look-up";
import { lookUpMark } from "#usecases/look-up-mark";
import { showLookUp } from "#usecases/show-look-up";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const SEEDS = Array.from({ length: 30 }, (_, k) => k + 1);

describeOnBothDatabases("looking a mark up", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    const rows = SEEDS.map((k) => `p/${k}.webp,mark-${k},,,0,,CC BY 4.0,Somebody`);
    const result = await importFiles(wired, {
      "entries.csv": ["key,title,kind", ...SEEDS.map((k) => `mark-${k},Mark ${k},mark`)].join("\n"),
      "photographs.csv": ["file,entry,shows,region,turn,pixels_per_mm,licence,credit", ...rows].join("\n"),
      ...Object.fromEntries(
        await Promise.all(SEEDS.map(async (k) => [`p/${k}.webp`, await drawMark(k)] as const)),
      ),
    });
    expect(result).toMatchObject({ ok: true, value: { recorded: { photographs: 30 } } });
  }, 120_000);
  afterAll(() => wired.end());

  const ask = async (bytes: Buffer, ownerHash = "owner") => {
    const result = await lookUpMark(wired, { bytes, region: null, ownerHash, days: 30 });
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    return result.value;
  };

  it("finds the very photograph first, with a likeness near 1, and keeps the answer with its model", async () => {
    const kept = await ask(await drawMark(7));
    const shown = await showLookUp(wired, kept.id);
    expect(shown?.view.matches[0]).toMatchObject({ entry: { slug: "mark-7" }, turn: 0 });
    expect(shown?.view.matches[0]?.similarity).toBeGreaterThan(0.97);
    expect(shown?.view).toMatchObject({ model: wired.embedders.inPlace.model, searched: 30 });
  });

  it("finds it turned, and says by how much it was turned back", async () => {
    const turned = await sharp(await drawMark(9))
      .rotate(90)
      .webp()
      .toBuffer();
    const shown = await showLookUp(wired, (await ask(turned)).id);
    expect(shown?.view.matches[0]).toMatchObject({ entry: { slug: "mark-9" }, turn: 270 });
  });

  it("gives the same order with the index as by reading every vector", async () => {
    const { vectors } = await wired.embedders.inPlace.embedQuery(await drawMark(12), {
      x: 0,
      y: 0,
      width: 240,
      height: 240,
      turn: 0,
    });
    const near = await wired.nearest.search(wired.embedders.inPlace.model, vectors, 5);
    const exact = await createNearest(database(), true).search(wired.embedders.inPlace.model, vectors, 5);
    const ids = (hits: typeof near) => hits.map((h) => `${h.turn} ${h.photographId}`).sort();
    expect(ids(near)).toEqual(ids(exact));
  });

  it("looks only at the region it is given", async () => {
    const mark = await drawMark(5);
    const wide = await sharp({ create: { width: 900, height: 600, channels: 3, background: "#999" } })
      .composite([{ input: mark, left: 500, top: 200 }])
      .webp({ quality: 95 })
      .toBuffer();
    const result = await lookUpMark(wired, {
      bytes: wide,
      region: { x: 500, y: 200, width: 240, height: 240, turn: 0 },
      ownerHash: "owner",
      days: 30,
    });
    const shown = result.ok ? await showLookUp(wired, result.value.id) : null;
    expect(shown?.view.matches[0]?.entry.slug).toBe("mark-5");
  });

  it("refuses a region outside the photograph, and keeps nothing", async () => {
    const before = await database().prisma.lookUp.count();
    const region = { x: 200, y: 0, width: 100, height: 100, turn: 0 };
    const result = await lookUpMark(wired, {
      bytes: await drawMark(1),
      region,
      ownerHash: "owner",
      days: 30,
    });
    expect(result).toMatchObject({ ok: false, error: { field: "region", rule: "region-inside" } });
    expect(await database().prisma.lookUp.count()).toBe(before);
  });

  it("is kept and deleted only by its owner, and its image goes with it", async () => {
    const kept = await ask(await drawMark(100));
    expect(await keepLookUp(wired, { id: kept.id, ownerHash: "stranger", days: null })).toBe(false);
    expect(await keepLookUp(wired, { id: kept.id, ownerHash: "owner", days: null })).toBe(true);
    expect((await showLookUp(wired, kept.id))?.view.expiresAt).toBeNull();
    expect(await deleteLookUp(wired, { id: kept.id, ownerHash: "stranger" })).toBe(false);
    expect(await wired.blobs.get(kept.sha256)).not.toBeNull();
    expect(await deleteLookUp(wired, { id: kept.id, ownerHash: "owner" })).toBe(true);
    expect(await wired.blobs.get(kept.sha256)).toBeNull();
    expect(await showLookUp(wired, kept.id)).toBeNull();
  });

  it("is forgotten after its time, unless its owner keeps it; an image that another shows stays", async () => {
    const picture = await drawMark(101);
    const gone = await ask(picture);
    const held = await ask(picture);
    await keepLookUp(wired, { id: held.id, ownerHash: "owner", days: null });
    const later = new Date(Date.now() + 31 * 24 * 60 * 60 * 1000);
    const clock = { now: () => later };
    expect(await showLookUp({ ...wired, clock }, gone.id)).toBeNull();
    await forgetExpired({ ...wired, clock });
    expect(await wired.lookUps.find(gone.id)).toBeNull();
    expect(await wired.lookUps.find(held.id)).not.toBeNull();
    expect(await wired.blobs.get(held.sha256)).not.toBeNull();
  });
});
