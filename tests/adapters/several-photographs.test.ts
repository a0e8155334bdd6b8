import sharp from "sharp";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { LookUpView } from "#core/look-ups/look-up";
import { combineSimilarities } from "#core/similarity/combine";
import { alignPhotographs } from "#usecases/align-photographs";
import { deleteLookUp } from "#usecases/forget-look-ups";
import type { PhotographToLookUp } from "#usecases/look-up/read-photographs";
import { lookUpMark } from "#usecases/look-up-mark";
import { showLookUp } from "#usecases/show-look-up";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

/** More entries than one photograph finds for one turn, so that some are found by one of two only. */
const SEEDS = Array.from({ length: 80 }, (_, k) => k + 1);
/** Which marks have a maker, and their period of use. */
const MAKERS: Readonly<Record<number, string>> = {
  11: "both,1850/1870",
  12: "both,1860/1880",
  13: "first-only,1850/1870",
  14: "apart,1850/1870",
  15: "apart,1900/1910",
};

describeOnBothDatabases("looking up several photographs", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    const result = await importFiles(wired, {
      "makers.csv": "key,name,kind\nboth,Both,firm\nfirst-only,First Only,firm\napart,Apart,firm",
      "entries.csv": [
        "key,title,kind,maker,period",
        ...SEEDS.map((k) => `mark-${k},Mark ${k},mark,${MAKERS[k] ?? ","}`),
      ].join("\n"),
      "photographs.csv": [
        "file,entry,shows,region,turn,pixels_per_mm,licence,credit",
        ...SEEDS.map((k) => `p/${k}.webp,mark-${k},,,0,,CC BY 4.0,Somebody`),
      ].join("\n"),
      ...Object.fromEntries(
        await Promise.all(SEEDS.map(async (k) => [`p/${k}.webp`, await drawMark(k)] as const)),
      ),
    });
    expect(result).toMatchObject({ ok: true, value: { recorded: { photographs: 80 } } });
  }, 240_000);
  afterAll(() => wired.end());

  const of = (bytes: Uint8Array, mark = 1): PhotographToLookUp => ({ bytes, region: null, mark });
  const ask = async (...photographs: PhotographToLookUp[]): Promise<LookUpView> => {
    const result = await lookUpMark(wired, { photographs, ownerHash: "owner", days: 30 });
    const shown = result.ok ? await showLookUp(wired, result.value.id) : null;
    if (!shown) throw new Error(JSON.stringify(result));
    return shown.view;
  };
  const blurred = async (seed: number) =>
    sharp(await drawMark(seed))
      .blur(9)
      .modulate({ brightness: 0.5 })
      .webp()
      .toBuffer();
  const slugs = (view: Pick<LookUpView, "matches">) => view.matches.map(({ entry }) => entry.slug);

  it("gives one ranking, in which each photograph's similarity was measured and not guessed", async () => {
    const view = await ask(of(await drawMark(7)), of(await blurred(40)));
    expect(view.photographs.map(({ mark }) => mark)).toEqual([1, 1]);
    expect(view.otherMarks).toEqual([]);
    expect(view.makers).toEqual([]);
    for (const { seen, similarity } of view.matches) {
      expect(seen.map(({ photograph }) => photograph).sort()).toEqual([1, 2]);
      expect(similarity).toBeCloseTo(combineSimilarities(seen.map((each) => each.similarity)), 6);
    }
    expect(slugs(view)[0]).toBe("mark-7");
  });

  it("does not depend on the order of the photographs, and hardly on one given twice", async () => {
    const [one, other] = [of(await drawMark(9)), of(await blurred(9))];
    const view = await ask(one, other);
    const turned = await ask(other, one);
    expect(slugs(turned)).toEqual(slugs(view));
    const twice = await ask(one, one);
    const once = await ask(one);
    expect(slugs(twice).slice(0, 10)).toEqual(slugs(once).slice(0, 10));
    expect(twice.matches[0]?.similarity).toBeCloseTo(once.matches[0]?.similarity ?? 0, 5);
  });

  it("gives a ranking for each mark, and the makers that use both with their reasons", async () => {
    const view = await ask(of(await drawMark(11), 3), of(await drawMark(12), 5), of(await blurred(11), 3));
    expect(view.photographs.map(({ mark }) => mark)).toEqual([1, 2, 1]);
    expect(slugs(view)[0]).toBe("mark-11");
    expect(view.otherMarks).toHaveLength(1);
    expect(view.otherMarks[0]?.mark).toBe(2);
    expect(view.otherMarks[0]?.matches[0]).toMatchObject({
      entry: { slug: "mark-12" },
      seen: [{ photograph: 2 }],
    });
    const [first] = view.makers;
    expect(first?.maker).toMatchObject({ slug: "both", name: "Both" });
    expect(first?.answers.map(({ mark, match }) => [mark, match.entry.slug])).toEqual([
      [1, "mark-11"],
      [2, "mark-12"],
    ]);
    expect(first?.against).toEqual([]);
    expect(view.makers.some(({ maker }) => maker.slug === "first-only")).toBe(false);
  });

  it("says that a maker's marks were not in use in the same years", async () => {
    const view = await ask(of(await drawMark(14), 1), of(await drawMark(15), 2));
    const apart = view.makers.find(({ maker }) => maker.slug === "apart");
    expect(apart?.against).toEqual([{ why: "periods-apart", marks: [1, 2] }]);
  });

  it("refuses a seventh photograph, and says which of several has something wrong", async () => {
    const one = of(await drawMark(1));
    const outside = { ...one, region: { x: 200, y: 0, width: 100, height: 100, turn: 0 } };
    const refused = async (...photographs: PhotographToLookUp[]) => {
      const result = await lookUpMark(wired, { photographs, ownerHash: "owner", days: 30 });
      return result.ok ? null : result.error;
    };
    const before = await database().prisma.lookUp.count();
    expect(await refused(...Array.from({ length: 7 }, () => one))).toMatchObject({
      field: "photograph",
      rule: "photographs-most",
      received: "7",
    });
    expect(await refused(one, outside)).toMatchObject({
      field: "region",
      rule: "region-inside",
      received: expect.stringMatching(/^photograph 2: /),
      params: { photograph: 2 },
    });
    expect(await database().prisma.lookUp.count()).toBe(before);
  });

  it("lays the photograph that is asked for over the entry's", async () => {
    const view = await ask(of(await drawMark(5)), of(await drawMark(6)));
    const entry = view.matches.find((each) => each.entry.slug === "mark-5");
    const laid: string[] = [];
    const aligner: typeof wired.aligner = {
      async align(query) {
        laid.push(query.sha256);
        return { ok: true, value: { homography: null, points: [], inliers: 0, plausible: false } };
      },
    };
    const align = (asked: number) =>
      alignPhotographs(
        { ...wired, aligner },
        { lookUp: view.id, asked, entry: "mark-5", photograph: entry?.photograph?.id ?? "" },
      );
    expect(await align(2)).toMatchObject({ ok: true, value: { inliers: 0 } });
    expect(await align(3)).toEqual({ ok: true, value: null });
    expect(await align(0)).toEqual({ ok: true, value: null });
    expect(laid).toEqual([view.photographs[1]?.sha256]);
  });

  it("is deleted with all its photographs, but for one that another look-up shows", async () => {
    const [gone, shared] = [await drawMark(301), await drawMark(302)];
    const view = await ask(of(gone), of(shared, 2));
    await ask(of(shared));
    expect(await deleteLookUp(wired, { id: view.id, ownerHash: "owner" })).toBe(true);
    const kept = await Promise.all(view.photographs.map(({ sha256 }) => wired.blobs.get(sha256)));
    expect(kept.map((bytes) => bytes !== null)).toEqual([false, true]);
    expect(await database().prisma.lookUpPhotograph.count({ where: { lookUpId: view.id } })).toBe(0);
  });

  it("reads a look-up kept when it held one photograph", async () => {
    const kept = await ask(of(await drawMark(3)));
    const { prisma } = database();
    const row = await prisma.lookUp.findUniqueOrThrow({ where: { id: kept.id } });
    const before = (row.matches as { seen?: unknown }[]).map(({ seen: _, ...match }) => match);
    await prisma.lookUp.update({ where: { id: kept.id }, data: { matches: before as object[] } });
    const shown = await showLookUp(wired, kept.id);
    expect(shown?.view.matches).toEqual(kept.matches);
    expect(shown?.view.matches[0]?.seen).toMatchObject([{ photograph: 1 }]);
  });
});
