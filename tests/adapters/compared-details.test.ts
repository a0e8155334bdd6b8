import { afterAll, beforeAll, expect, it } from "vitest";
import type { Calibration } from "#core/similarity/calibration";
import { COMPARED } from "#core/similarity/rank";
import { lookUpMark } from "#usecases/look-up-mark";
import type { Embedder } from "#usecases/ports";
import { showLookUp } from "#usecases/show-look-up";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const SEEDS = Array.from({ length: 30 }, (_, k) => k + 1);
const WHOLE = { x: 0, y: 0, width: 240, height: 240, turn: 0 };

/** Cosines hardly count, what is said of a pair does. */
const BY_PAIRS = {
  similarity: { slope: 0.001, bend: 0, middle: 0.5 },
  photographs: 0,
  pairScore: 1,
  unpaired: -50,
  none: { constant: 0, entries: 0 },
};

describeOnBothDatabases("details of photographs", (database) => {
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

  const photographOf = async (seed: number) => {
    const photograph = (await wired.entries.bySlug(`mark-${seed}`))?.photographs[0];
    if (!photograph) throw new Error(`mark-${seed} has no photograph.`);
    return photograph;
  };

  /** The model in place, with a curve and a judge of the test's own. */
  const judgedBy = (judge: Embedder["judge"], reranked: Calibration["reranked"] = BY_PAIRS) => {
    const { inPlace } = wired.embedders;
    const calibration: Calibration = {
      model: inPlace.model,
      date: "2026-01-01",
      fittedOn: { what: "nothing", queries: 1, fewest: 1, most: 1 },
      plain: { ...BY_PAIRS, similarity: { slope: 50, bend: 0, middle: 0.5 }, pairScore: 0, unpaired: 0 },
      reranked,
      measured: [],
      reliability: [],
    };
    const embedder: Embedder = { ...inPlace, calibration, judge };
    return { ...wired, embedders: { ...wired.embedders, inPlace: embedder, find: async () => embedder } };
  };

  async function slugsOf(needs: ReturnType<typeof judgedBy>, seed: number) {
    const result = await lookUpMark(needs, {
      photographs: [{ bytes: await drawMark(seed), region: null, mark: 1 }],
      ownerHash: "owner",
      days: 30,
    });
    const shown = result.ok ? await showLookUp(needs, result.value.id) : null;
    return shown?.view.matches.map(({ entry }) => entry.slug) ?? [];
  }

  it("are kept with the vector, number for number, and come back for those that are asked for", async () => {
    const { model, embedReference } = wired.embedders.inPlace;
    const [third, ninth] = [await photographOf(3), await photographOf(9)];
    const found = await wired.nearest.describedBy(model, [third.id, ninth.id]);
    expect([...found.keys()].sort()).toEqual([third.id, ninth.id].sort());
    const bytes = await wired.blobs.get(third.sha256);
    const own = await embedReference(bytes ?? new Uint8Array(), WHOLE);
    const kept = found.get(third.id);
    expect(kept?.details).toHaveLength(6400);
    expect(kept?.details).toEqual(own.details);
    expect(kept?.vector).toHaveLength(own.vector.length);
    for (const [i, x] of own.vector.entries()) expect(kept?.vector[i]).toBeCloseTo(x, 5);
    expect(await wired.nearest.describedBy(model, [])).toEqual(new Map());
  });

  it("are filled in where a photograph is embedded anew, and null where a model gives none", async () => {
    const { model, dimension } = wired.embedders.inPlace;
    const { id } = await photographOf(4);
    const { prisma } = database();
    const own = (await wired.nearest.describedBy(model, [id])).get(id);
    if (!own) throw new Error("mark-4 has no details.");
    await prisma.$executeRaw`DELETE FROM retrieval.photograph_vectors WHERE photograph_id = ${id}::uuid`;
    await wired.models.addVectors(model, [
      { id, vector: new Float32Array(dimension).fill(0.01), details: null },
    ]);
    expect(await wired.nearest.describedBy(model, [id])).toEqual(new Map());
    await prisma.$executeRaw`DELETE FROM retrieval.photograph_vectors WHERE photograph_id = ${id}::uuid`;
    await wired.models.addVectors(model, [{ id, ...own }]);
    expect((await wired.nearest.describedBy(model, [id])).get(id)?.details).toEqual(own.details);
  });

  it("of the nearest entries are compared, and the answer is in the order that comes out", async () => {
    const { id } = await photographOf(17);
    const model = wired.embedders.inPlace.model;
    const wanted = (await wired.nearest.describedBy(model, [id])).get(id)?.details;
    let asked = 0;
    const needs = judgedBy(async (pairs) => {
      asked = pairs.length;
      return pairs.map(({ reference }, i) =>
        reference.details?.every((x, k) => x === wanted?.[k]) ? 40 : -i,
      );
    });
    const before = await slugsOf(
      judgedBy(async (pairs) => pairs.map(() => null), null),
      7,
    );
    const after = await slugsOf(needs, 7);
    const compared = before.slice(0, COMPARED);
    expect(asked).toBe(COMPARED);
    expect(before[0]).toBe("mark-7");
    expect(compared).toContain("mark-17");
    expect(after).toEqual(["mark-17", ...compared.filter((slug) => slug !== "mark-17")]);
  });

  it("that are missing leave the answer as the vectors have it", async () => {
    await database().prisma.$executeRaw`UPDATE retrieval.photograph_vectors SET details = NULL`;
    const plain = await slugsOf(
      judgedBy(async (pairs) => pairs.map(() => null), null),
      7,
    );
    const { judge } = wired.embedders.inPlace;
    expect(await slugsOf(judgedBy(judge), 7)).toEqual(plain);
    expect(plain[0]).toBe("mark-7");
  });
});
