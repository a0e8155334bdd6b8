import { fingerprint } from "#core/photographs/fingerprint";
import type { RecordedCounts, References } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";
import { recordMakers } from "./record-makers.ts";
import { createEntries, currentRevisions, recordRevisions } from "./record-revisions.ts";
import { chunks } from "./revision-rows.ts";
import { toPhotograph } from "./rows.ts";

type Tx = Prisma.TransactionClient;
type Batch = Parameters<References["record"]>[0];

/** A large import holds its transaction this long at most, in milliseconds. */
const LONGEST = 30 * 60_000;

/** Where references are recorded: makers, entries with their revisions, photographs with their vectors. */
export function createReferences({ prisma }: Database): References {
  return {
    async knownMakers(slugs) {
      const rows = await prisma.maker.findMany({
        where: { slug: { in: distinct(slugs) } },
        select: { slug: true },
      });
      return new Set(rows.map((r) => r.slug));
    },
    async knownEntries(slugs) {
      const rows = await prisma.entry.findMany({
        where: { slug: { in: distinct(slugs) } },
        select: { slug: true },
      });
      return new Set(rows.map((r) => r.slug));
    },
    async knownPhotographs(model, entries) {
      const rows = await prisma.$queryRaw<{ id: string }[]>`
        SELECT v.photograph_id AS id FROM retrieval.photograph_vectors AS v
        JOIN photographs ON photographs.id = v.photograph_id
        JOIN entries ON entries.id = photographs.entry_id
        JOIN revision_photographs AS shown
          ON shown.photograph_id = photographs.id AND shown.revision_id = entries.current_revision_id
        WHERE v.model = ${model} AND entries.slug = ANY (${distinct(entries)}::text[])`;
      const known = new Set<string>();
      for (const ids of chunks(rows.map((r) => r.id))) {
        const photographs = await prisma.photograph.findMany({
          where: { id: { in: [...ids] } },
          include: { entry: { select: { slug: true } } },
        });
        for (const p of photographs) known.add(fingerprint({ ...toPhotograph(p), entry: p.entry.slug }));
      }
      return known;
    },
    record: (batch) =>
      prisma.$transaction((tx) => recordAll(tx, batch), { timeout: LONGEST, maxWait: LONGEST }),
  };
}

async function recordAll(tx: Tx, batch: Batch): Promise<RecordedCounts> {
  const makers = await recordMakers(tx, batch.makers);
  const before = await currentRevisions(tx, [
    ...batch.entries.map((e) => e.slug),
    ...batch.photographs.map((p) => p.entry),
  ]);
  const created = await createEntries(tx, batch, before);
  const vectorsBefore = await tx.$queryRaw<
    { n: number }[]
  >`SELECT count(*)::int AS n FROM retrieval.photograph_vectors`;
  const fresh = batch.photographs.filter((p) => p.vector !== null);
  // Filling an index row by row takes several times longer than making it afterwards.
  const refill = fresh.length > (vectorsBefore[0]?.n ?? 0) / 2 && fresh.length > 100;
  if (refill) await tx.$executeRaw`DROP INDEX retrieval.photograph_vectors_nearest`;
  const counts = await recordRevisions(tx, batch, before);
  if (refill)
    await tx.$executeRaw`CREATE INDEX photograph_vectors_nearest ON retrieval.photograph_vectors
      USING hnsw (vector public.vector_ip_ops) WITH (m = 16, ef_construction = 100)`;
  // The embedded engine never counts its rows by itself, and without counts the planner reads every vector.
  if (fresh.length > 100)
    await tx.$executeRaw`ANALYZE makers, entries, revisions, photographs, revision_photographs, retrieval.entry_words, retrieval.photograph_vectors`;
  return { makers, entries: created, ...counts };
}

const distinct = (values: readonly string[]): string[] => [...new Set(values)];
