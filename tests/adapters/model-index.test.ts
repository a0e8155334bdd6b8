import { beforeAll, expect, it } from "vitest";
import { createModels } from "#adapters/models-store";
import { createNearest } from "#adapters/nearest";
import type { QueryVector } from "#usecases/ports";
import { describeOnBothDatabases } from "../setup/databases.ts";

const COUNT = 2_000;
const DIMENSION = 256;
const MODELS = ["index-test@1.0.0", "index-test@2.0.0"] as const;

describeOnBothDatabases("the index, with two models of 2,000 vectors each", (database) => {
  const vectors = new Map(MODELS.map((model, k) => [model, drawVectors(k + 1)] as const));

  beforeAll(async () => {
    const { prisma } = database();
    const models = createModels(database());
    const ids = await addPhotographs();
    const [first, second] = MODELS;
    await models.change([{ model: first, dimension: DIMENSION, state: "answering" }]);
    await models.change([{ model: second, dimension: DIMENSION, state: "filling" }]);
    for (let start = 0; start < COUNT; start += 250)
      for (const model of MODELS)
        await models.addVectors(
          model,
          ids
            .slice(start, start + 250)
            .map((id, k) => ({ id, vector: vectorAt(model, start + k), details: null })),
        );
    await prisma.$executeRaw`ANALYZE retrieval.photograph_vectors`;
  }, 240_000);

  const vectorAt = (model: (typeof MODELS)[number], k: number): Float32Array =>
    vectors.get(model)?.[k] ?? new Float32Array(DIMENSION);

  /** One entry that shows so many photographs. */
  async function addPhotographs(): Promise<readonly string[]> {
    const { prisma } = database();
    const [entry] = await prisma.$queryRaw<{ id: string }[]>`
      INSERT INTO entries (id, slug, state) VALUES (gen_random_uuid(), 'many', 'under review') RETURNING id::text`;
    const [revision] = await prisma.$queryRaw<{ id: string }[]>`
      INSERT INTO revisions (id, entry_id, number, content_hash, content, title, kind, material, created_by)
      VALUES (gen_random_uuid(), ${entry?.id}::uuid, 1, '', '{}', 'Many', 'mark', '', 'test') RETURNING id::text`;
    await prisma.$executeRaw`UPDATE entries SET current_revision_id = ${revision?.id}::uuid`;
    const photographs = await prisma.$queryRaw<{ id: string }[]>`
      INSERT INTO photographs (id, entry_id, sha256, width, height, region_x, region_y, region_width, region_height,
        region_turn, shows, licence, credit)
      SELECT gen_random_uuid(), ${entry?.id}::uuid, '', 8, 8, 0, 0, 8, 8, 0, '', '', ''
      FROM generate_series(1, ${COUNT}) RETURNING id::text`;
    await prisma.$executeRaw`INSERT INTO revision_photographs (revision_id, photograph_id, position)
      SELECT ${revision?.id}::uuid, id, row_number() OVER (ORDER BY id) FROM photographs`;
    return photographs.map(({ id }) => id);
  }

  it.each(MODELS)(
    "finds at least 0.98 of the ten nearest of %s that reading every vector finds",
    async (model) => {
      const random = normal(99);
      const found: number[] = [];
      for (let round = 0; round < 10; round++) {
        const queries = Array.from(
          { length: 12 },
          (_, turn): QueryVector => ({
            turn,
            details: null,
            vector: near(vectorAt(model, (round * 12 + turn) * 16), 0.6, random),
          }),
        );
        const hits = await createNearest(database()).search(model, queries, 10);
        const wanted = await createNearest(database(), true).search(model, queries, 10);
        expect(hits.length).toBe(120);
        expect(wanted.length).toBe(120);
        const key = (hit: (typeof hits)[number]) => `${hit.turn} ${hit.photographId}`;
        const keys = new Set(hits.map(key));
        found.push(wanted.filter((hit) => keys.has(key(hit))).length / wanted.length);
      }
      const recall = found.reduce((sum, share) => sum + share, 0) / found.length;
      expect(recall).toBeGreaterThanOrEqual(0.98);
    },
  );

  it("is used for each model, and for no other's vectors", async () => {
    const { prisma } = database();
    await prisma.$queryRaw`SELECT 1 AS n FROM pg_stat_force_next_flush()`;
    const indexes = await prisma.$queryRaw<{ rows: number }[]>`
      SELECT reltuples::int AS rows FROM pg_class WHERE relname LIKE 'nearest_%' ORDER BY relname`;
    expect(indexes).toEqual([{ rows: COUNT }, { rows: COUNT }]);
    const [row] = await prisma.$queryRaw<{ n: number }[]>`
      SELECT count(*)::int AS n FROM pg_stat_user_indexes WHERE indexrelname LIKE 'nearest_%' AND idx_scan > 0`;
    expect(row?.n).toBe(2);
  });
});

/** Unit vectors in groups of five, as five photographs of one mark give them. */
function drawVectors(seed: number): readonly Float32Array[] {
  const random = normal(seed);
  const centres = Array.from({ length: COUNT / 5 }, () =>
    unit(Float32Array.from({ length: DIMENSION }, random)),
  );
  return Array.from({ length: COUNT }, (_, k) =>
    near(centres[Math.floor(k / 5)] ?? new Float32Array(), 0.5, random),
  );
}

/** A unit vector some way off another. */
function near(vector: Float32Array, distance: number, random: () => number): Float32Array {
  const off = unit(Float32Array.from(vector, random));
  return unit(vector.map((x, i) => x + distance * (off[i] ?? 0)));
}

function unit(vector: Float32Array): Float32Array {
  const length = Math.hypot(...vector);
  return vector.map((x) => x / length);
}

/** Normally distributed numbers, always the same from one seed (Box and Muller 1958, on Lehmer's generator). */
function normal(seed: number): () => number {
  let state = seed * 7919;
  const uniform = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
