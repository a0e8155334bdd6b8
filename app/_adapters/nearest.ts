import type { Hit } from "#core/similarity/rank";
import type { Nearest } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { isOfModel, vectorOfLength } from "./model-index.ts";

type Row = { photograph_id: string; entry_id: string; similarity: number; turn: number };

/**
 * Candidates that the index keeps in hand. Of 10,000 drawn marks it found 0.963 and 0.975 of the exact ten nearest at 80
 * (the index differs a little each time it is made), 0.979 and 0.984 at 100, 0.987 at 160, in about the time it takes at
 * 100 (`npm run benchmark` prints it).
 */
const EFFORT = 160;

/**
 * Nearest neighbours by inner product (vectors have unit length) in Postgres with pgvector, all turns of a query in
 * one round trip. `exact` reads every vector: slower, and the measure for the index.
 */
export function createNearest(database: Database, exact = false): Nearest {
  const { prisma } = database;
  return {
    async search(model, queries, limit) {
      if (limit < 1 || limit > 500) throw new RangeError(`limit must be 1 to 500. Received ${limit}.`);
      const [first] = queries;
      if (!first) return [];
      const stored = vectorOfLength(first.vector.length);
      const rows = await prisma.$transaction(async (tx) => {
        if (exact) await tx.$executeRaw`SELECT set_config('enable_indexscan', 'off', true)`;
        else
          await tx.$executeRaw`SELECT set_config('hnsw.ef_search', ${String(Math.max(EFFORT, limit))}, true),
            set_config('hnsw.iterative_scan', 'relaxed_order', true), set_config('enable_seqscan', 'off', true),
            set_config('enable_sort', 'off', true)`;
        // Without whole reads and sorting, so that neither the index nor those of the tables joined are passed over.
        // Materialized: each query's text is parsed once, not again for every row it is compared with; and what the
        // photographs belong to is found once for all turns, not by reading every revision for each.
        return tx.$queryRaw<Row[]>`
          WITH q AS MATERIALIZED (
            SELECT given.vector::vector AS asked, given.turn
            FROM unnest(${queries.map(write)}::text[], ${queries.map((q) => q.turn)}::float8[]) AS given (vector, turn)
          ), near AS MATERIALIZED (
            SELECT nearest.photograph_id, nearest.similarity, q.turn
            FROM q
            CROSS JOIN LATERAL (
              SELECT photograph_id, -(${stored} <#> asked) AS similarity
              FROM retrieval.photograph_vectors
              WHERE ${isOfModel(model)}
              ORDER BY ${stored} <#> asked
              LIMIT ${limit}
            ) AS nearest
          ), shown AS MATERIALIZED (
            SELECT photographs.id, photographs.entry_id
            FROM photographs
            JOIN entries ON entries.id = photographs.entry_id
            JOIN revision_photographs AS listed
              ON listed.photograph_id = photographs.id AND listed.revision_id = entries.current_revision_id
            WHERE photographs.id = ANY (ARRAY (SELECT DISTINCT photograph_id FROM near))
              AND entries.listed AND NOT photographs.hidden
          )
          SELECT near.photograph_id, shown.entry_id, near.similarity, near.turn
          FROM near
          JOIN shown ON shown.id = near.photograph_id`;
      });
      return rows.map(toHit);
    },
    async among(model, queries, entries) {
      const rows = await prisma.$queryRaw<Row[]>`
        WITH q AS MATERIALIZED (
          SELECT given.vector::vector, given.turn
          FROM unnest(${queries.map(write)}::text[], ${queries.map((q) => q.turn)}::float8[]) AS given (vector, turn)
        )
        SELECT v.photograph_id, entries.id AS entry_id, -(v.vector <#> q.vector) AS similarity, q.turn
        FROM q
        CROSS JOIN entries
        JOIN revision_photographs AS shown ON shown.revision_id = entries.current_revision_id
        JOIN retrieval.photograph_vectors AS v ON v.photograph_id = shown.photograph_id AND v.model = ${model}
        JOIN photographs ON photographs.id = shown.photograph_id AND NOT photographs.hidden
        WHERE entries.listed AND entries.id = ANY (${[...entries]}::uuid[])`;
      return rows.map(toHit);
    },
    async describedBy(model, photographs) {
      const rows = await prisma.$queryRaw<{ id: string; vector: string; details: Uint8Array }[]>`
        SELECT photograph_id AS id, vector::text AS vector, details FROM retrieval.photograph_vectors
        WHERE model = ${model} AND photograph_id = ANY (${[...photographs]}::uuid[]) AND details IS NOT NULL`;
      return new Map(
        rows.map(({ id, vector, details }) => [
          id,
          { vector: Float32Array.from(JSON.parse(vector) as number[]), details: Int8Array.from(details) },
        ]),
      );
    },
    async photographsOf(model, entries) {
      const rows = await prisma.$queryRaw<{ entry_id: string; n: number }[]>`
        SELECT entries.id AS entry_id, count(*)::int AS n
        FROM entries
        JOIN revision_photographs AS shown ON shown.revision_id = entries.current_revision_id
        JOIN retrieval.photograph_vectors AS v ON v.photograph_id = shown.photograph_id AND v.model = ${model}
        JOIN photographs ON photographs.id = shown.photograph_id AND NOT photographs.hidden
        WHERE entries.listed AND entries.id = ANY (${[...entries]}::uuid[])
        GROUP BY entries.id`;
      return new Map(rows.map((row) => [row.entry_id, row.n]));
    },
    countEntries: () =>
      prisma.entry.count({
        where: { listed: true, currentRevisionId: { not: null }, photographs: { some: { hidden: false } } },
      }),
    async count(model) {
      const [row] = await prisma.$queryRaw<{ n: number }[]>`
        SELECT count(*)::int AS n FROM retrieval.photograph_vectors WHERE model = ${model}`;
      return row?.n ?? 0;
    },
  };
}

const toHit = (row: Row): Hit => ({
  photographId: row.photograph_id,
  entry: row.entry_id,
  similarity: row.similarity,
  turn: row.turn,
});

/** A vector as pgvector reads it. */
export function write(query: { readonly vector: Float32Array }): string {
  return `[${Array.from(query.vector, (x) => x.toPrecision(7)).join(",")}]`;
}

/** Details as base64, for Postgres to decode; null when there are none. */
export function writeDetails({ details }: { readonly details: Int8Array | null }): string | null {
  return details && Buffer.from(details.buffer, details.byteOffset, details.byteLength).toString("base64");
}
