import sharp from "sharp";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createNearest } from "#adapters/nearest";
import { type Knowledge, NOTHING_KNOWN } from "#core/look-ups/knowledge";
import { LAID_OPEN } from "#core/similarity/fuse";
import { deleteLookUp, forgetExpired } from "#usecases/forget-look-ups";
import { keepLookUp } from "#usecases/keep-look-up";
import { lookUpMark } from "#usecases/look-up-mark";
import { showLookUp } from "#usecases/show-look-up";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const SEEDS = Array.from({ length: 30 }, (_, k) => k + 1);
/** What some of the entries record: words, technique, material and size. */
const RECORDED: Readonly<Record<number, string>> = {
  7: "T·BODKIN,stamped,pewter,15 x 16",
  8: "BRÄNDRETH & SONS,printed,printed tinplate,24 x 26",
  9: "HESK,woven,woven ribbon,22 x 13",
};

describeOnBothDatabases("looking a mark up", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    const rows = SEEDS.map((k) => `p/${k}.webp,mark-${k},,,0,,CC BY 4.0,Somebody`);
    const result = await importFiles(wired, {
      "entries.csv": [
        "key,title,kind,words,technique,material,size_mm",
        ...SEEDS.map((k) => `mark-${k},Mark ${k},mark,${RECORDED[k] ?? ",,,"}`),
        "without-photograph,Without a photograph,mark,QUILLON,stamped,brass,12 x 8",
      ].join("\n"),
      "photographs.csv": ["file,entry,shows,region,turn,pixels_per_mm,licence,credit", ...rows].join("\n"),
      ...Object.fromEntries(
        await Promise.all(SEEDS.map(async (k) => [`p/${k}.webp`, await drawMark(k)] as const)),
      ),
    });
    expect(result).toMatchObject({ ok: true, value: { recorded: { photographs: 30 } } });
  }, 120_000);
  afterAll(() => wired.end());

  const ask = async (bytes: Buffer, ownerHash = "owner", known: Partial<Knowledge> = {}) => {
    const result = await lookUpMark(wired, {
      photographs: [{ bytes, region: null, mark: 1 }],
      known: { ...NOTHING_KNOWN, ...known },
      ownerHash,
      days: 30,
    });
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
      photographs: [{ bytes: wide, region: { x: 500, y: 200, width: 240, height: 240, turn: 0 }, mark: 1 }],
      ownerHash: "owner",
      days: 30,
    });
    const shown = result.ok ? await showLookUp(wired, result.value.id) : null;
    expect(shown?.view.matches[0]?.entry.slug).toBe("mark-5");
  });

  const shownFor = async (bytes: Buffer, known: Partial<Knowledge>) => {
    const shown = await showLookUp(wired, (await ask(bytes, "owner", known)).id);
    if (!shown) throw new Error("The look-up was not kept.");
    return shown.view;
  };

  it("lifts the entry whose letters agree, and keeps what was known with the answer", async () => {
    const known = { letters: "br?ndreth*", material: "tinplate", widthMm: 25 };
    const view = await shownFor(await drawMark(200), known);
    expect(view.asked).toEqual({ ...NOTHING_KNOWN, ...known });
    const place = view.matches.findIndex(({ entry }) => entry.slug === "mark-8");
    expect(place).toBeLessThan(LAID_OPEN);
    expect(view.matches[place]?.findings.map(({ aspect, stands }) => `${aspect} ${stands}`)).toEqual([
      "letters for",
      "size for",
      "material for",
    ]);
  });

  it("keeps the very photograph in sight when everything speaks against it, and says what does", async () => {
    const known = { letters: "HESK", material: "stoneware", technique: "printed", kind: "label" } as const;
    const view = await shownFor(await drawMark(7), known);
    const open = view.matches.slice(0, LAID_OPEN);
    const found = open.find(({ entry }) => entry.slug === "mark-7");
    expect(found?.likeness).toBe("very close");
    expect(found?.findings.map(({ aspect, stands }) => `${aspect} ${stands}`)).toEqual([
      "letters against",
      "technique against",
      "material against",
      "kind against",
    ]);
    expect(view.noneFits).toBe(false);
  });

  it("lists an entry that has no photograph when its letters agree, and says what found it", async () => {
    const view = await shownFor(await drawMark(7), { letters: "QUILL?N" });
    const found = view.matches.slice(0, LAID_OPEN).find(({ entry }) => entry.slug === "without-photograph");
    expect(found).toMatchObject({ foundBy: "letters", photograph: null, similarity: null, likeness: null });
    expect(found?.findings).toMatchObject([{ aspect: "letters", stands: "for", degree: "whole" }]);
  });

  it("gives probabilities that sum to 1 at most, and keeps those it gave", async () => {
    const kept = await ask(await drawMark(7));
    const found = await wired.lookUps.find(kept.id);
    const probabilities = found?.matches.map(({ probability }) => probability ?? Number.NaN) ?? [];
    const sum = probabilities.reduce((total, each) => total + each, found?.noneProbability ?? Number.NaN);
    expect(sum).toBeGreaterThan(0.5);
    expect(sum).toBeLessThanOrEqual(1 + 1e-9);
    expect(found?.calibrated).toBe(wired.embedders.inPlace.calibration?.date);
    const shown = await showLookUp(wired, kept.id);
    expect(shown?.view.matches.map(({ probability }) => probability)).toEqual(probabilities);
    expect(shown?.view.noneProbability).toBe(found?.noneProbability);
    expect(shown?.view.matches[0]).toMatchObject({
      entry: { slug: "mark-7" },
      probability: probabilities[0],
    });
    expect(probabilities[0]).toBeGreaterThan(0.5);
  });

  it("what is known moves the same probabilities, also that none fits", async () => {
    const view = async (letters: string) => shownFor(await drawMark(200), { letters });
    const of = ({ matches }: Awaited<ReturnType<typeof view>>) =>
      matches.find(({ entry }) => entry.slug === "mark-8")?.probability ?? 0;
    const [unknown, agree, against] = [await view(""), await view("BRANDRETH"), await view("XQZVW")];
    expect(of(agree)).toBeGreaterThan(of(unknown));
    expect(against.noneProbability).toBeGreaterThan(unknown.noneProbability ?? Number.NaN);
  });

  it("an answer from before there were probabilities has none", async () => {
    const kept = await ask(await drawMark(7));
    const matches = kept.matches.map(({ probability: _, ...match }) => match);
    await database().prisma.lookUp.update({
      where: { id: kept.id },
      data: { matches: JSON.parse(JSON.stringify(matches)), noneProbability: null, calibrated: null },
    });
    const shown = await showLookUp(wired, kept.id);
    expect(shown?.view).toMatchObject({ noneProbability: null, calibrated: null });
    expect(shown?.view.matches[0]).toMatchObject({ probability: null, likeness: "very close" });
  });

  it("gives the same answer when nothing is known as when nothing was said of it", async () => {
    const bytes = await drawMark(12);
    const said = await showLookUp(wired, (await ask(bytes)).id);
    const result = await lookUpMark(wired, {
      photographs: [{ bytes, region: null, mark: 1 }],
      ownerHash: "owner",
      days: 30,
    });
    const unsaid = result.ok ? await showLookUp(wired, result.value.id) : null;
    expect(unsaid?.view.matches).toEqual(said?.view.matches);
    expect(unsaid?.view.matches).toHaveLength(24);
  });

  it("measures every photograph of the entries it is given, however far away", async () => {
    const bytes = await drawMark(12);
    const region = { x: 0, y: 0, width: 240, height: 240, turn: 0 };
    const { vectors } = await wired.embedders.inPlace.embedQuery(bytes, region);
    const rows = await database().prisma.entry.findMany({ where: { slug: { in: ["mark-3", "mark-12"] } } });
    const ids = rows.map(({ id }) => id);
    const hits = await wired.nearest.among(wired.embedders.inPlace.model, vectors, ids);
    expect(hits).toHaveLength(2 * vectors.length);
    const near = await createNearest(database(), true).search(wired.embedders.inPlace.model, vectors, 30);
    const key = (hit: (typeof hits)[number]) =>
      `${hit.turn} ${hit.photographId} ${hit.similarity.toFixed(6)}`;
    expect(hits.map(key).sort()).toEqual(
      near
        .filter((hit) => ids.includes(hit.entry))
        .map(key)
        .sort(),
    );
  });

  it("refuses a region outside the photograph, and keeps nothing", async () => {
    const before = await database().prisma.lookUp.count();
    const region = { x: 200, y: 0, width: 100, height: 100, turn: 0 };
    const result = await lookUpMark(wired, {
      photographs: [{ bytes: await drawMark(1), region, mark: 1 }],
      ownerHash: "owner",
      days: 30,
    });
    expect(result).toMatchObject({ ok: false, error: { field: "region", rule: "region-inside" } });
    expect(await database().prisma.lookUp.count()).toBe(before);
  });

  it("is kept and deleted only by its owner, and its image goes with it", async () => {
    const kept = await ask(await drawMark(100));
    const image = kept.photographs[0]?.sha256 ?? "";
    expect(await keepLookUp(wired, { id: kept.id, ownerHash: "stranger", days: null })).toBe(false);
    expect(await keepLookUp(wired, { id: kept.id, ownerHash: "owner", days: null })).toBe(true);
    expect((await showLookUp(wired, kept.id))?.view.expiresAt).toBeNull();
    expect(await deleteLookUp(wired, { id: kept.id, ownerHash: "stranger" })).toBe(false);
    expect(await wired.blobs.get(image)).not.toBeNull();
    expect(await deleteLookUp(wired, { id: kept.id, ownerHash: "owner" })).toBe(true);
    expect(await wired.blobs.get(image)).toBeNull();
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
    expect(await wired.blobs.get(held.photographs[0]?.sha256 ?? "")).not.toBeNull();
  });
});
