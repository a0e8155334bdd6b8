import type { Coverage, KnownModel, ModelChange } from "#core/models/known-model";
import type { Models } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";
import { dropModelIndex, makeModelIndex } from "./model-index.ts";
import { write, writeDetails } from "./nearest.ts";

type Tx = Prisma.TransactionClient;

/** Making an index of vectors that are there already takes about a second for a thousand. */
const LONGEST = 30 * 60_000;

/** Joins photographs to the entries whose current revision shows them. */
const SHOWN = Prisma.sql`photographs AS p
  JOIN entries ON entries.id = p.entry_id
  JOIN revision_photographs AS shown
    ON shown.photograph_id = p.id AND shown.revision_id = entries.current_revision_id`;

/** Which models have vectors in this reference, and what they do. */
export function createModels({ prisma }: Database): Models {
  /** One process at a time: models change seldom, and what is decided on must not move meanwhile. */
  const alone = <T>(work: (tx: Tx) => Promise<T>): Promise<T> =>
    prisma.$transaction(
      async (tx) => {
        await tx.$executeRaw`LOCK TABLE retrieval.models IN SHARE ROW EXCLUSIVE MODE`;
        return work(tx);
      },
      { timeout: LONGEST, maxWait: LONGEST },
    );
  return {
    all: () => all(prisma),
    change: (changes) => alone((tx) => make(tx, changes)),
    coverage: (model) => coverage(prisma, model),
    lacking(model, after, limit) {
      if (limit < 1 || limit > 500) throw new RangeError(`limit must be 1 to 500. Received ${limit}.`);
      return lacking(prisma, model, after, limit);
    },
    async addVectors(model, vectors) {
      await prisma.$executeRaw`INSERT INTO retrieval.photograph_vectors (photograph_id, model, vector, details)
        SELECT id, ${model}, vector::vector, decode(details, 'base64')
        FROM unnest(${vectors.map((v) => v.id)}::uuid[], ${vectors.map(write)}::text[],
          ${vectors.map(writeDetails)}::text[]) AS v (id, vector, details)
        ON CONFLICT DO NOTHING`;
    },
    remove: (model) =>
      alone(async (tx) => {
        const gone = await tx.$executeRaw`
          DELETE FROM retrieval.models WHERE model = ${model} AND state = 'retired'`;
        if (gone > 0) await tx.$executeRaw`DELETE FROM retrieval.photograph_vectors WHERE model = ${model}`;
        return gone > 0;
      }),
    switchOver: (decide) =>
      alone(async (tx) => {
        // An import under way may be adding photographs without vectors of the model: it is waited for.
        await tx.$executeRaw`LOCK TABLE entries IN SHARE MODE`;
        const known = await all(tx);
        const filling = known.find((k) => k.state === "filling");
        const changes = filling ? decide(known, await coverage(tx, filling.model)) : [];
        await make(tx, changes);
        return changes;
      }),
  };
}

function all(tx: Tx): Promise<readonly KnownModel[]> {
  return tx.$queryRaw<
    KnownModel[]
  >`SELECT model, dimension, state, since FROM retrieval.models ORDER BY model`;
}

async function make(tx: Tx, changes: readonly ModelChange[]): Promise<void> {
  for (const { model, dimension, state } of changes) {
    await tx.$executeRaw`INSERT INTO retrieval.models (model, dimension, state)
      VALUES (${model}, ${dimension}, ${state})
      ON CONFLICT (model) DO UPDATE SET dimension = excluded.dimension, state = excluded.state, since = now()`;
    if (state === "retired") await dropModelIndex(tx, model);
    else await makeModelIndex(tx, model, dimension);
  }
}

async function coverage(tx: Tx, model: string): Promise<Coverage> {
  const [row] = await tx.$queryRaw<Coverage[]>`
    SELECT count(v.photograph_id)::int AS done, count(*)::int AS of
    FROM ${SHOWN} LEFT JOIN retrieval.photograph_vectors AS v ON v.photograph_id = p.id AND v.model = ${model}`;
  return row ?? { done: 0, of: 0 };
}

async function lacking(tx: Tx, model: string, after: string | null, limit: number) {
  const rows = await tx.$queryRaw<LackingRow[]>`
    SELECT p.id, p.sha256, p.width AS image_width, p.height AS image_height, p.region_x AS x, p.region_y AS y, p.region_width AS width,
      p.region_height AS height, p.region_turn AS turn
    FROM ${SHOWN}
    WHERE (${after}::uuid IS NULL OR p.id > ${after}::uuid) AND NOT EXISTS (
      SELECT FROM retrieval.photograph_vectors AS v WHERE v.photograph_id = p.id AND v.model = ${model})
    ORDER BY p.id LIMIT ${limit}`;
  return rows.map(({ id, sha256, image_width, image_height, ...region }) => ({
    id,
    sha256,
    width: image_width,
    height: image_height,
    region,
  }));
}

type LackingRow = {
  readonly id: string;
  readonly sha256: string;
  readonly image_width: number;
  readonly image_height: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
};
