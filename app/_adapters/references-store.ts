import { fingerprint } from "#core/photographs/fingerprint";
import type { RecordedCounts, References } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";
import { dropModelIndex, makeModelIndex } from "./model-index.ts";
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
    async knownPhotographs(entries) {
      const rows = await prisma.$queryRaw<{ id: string }[]>`
        SELECT shown.photograph_id AS id FROM entries
        JOIN revision_photographs AS shown ON shown.revision_id = entries.current_revision_id
        WHERE entries.slug = ANY (${distinct(entries)}::text[])`;
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
  const refilled = await modelsToRefill(tx, batch);
  for (const { model } of refilled) await dropModelIndex(tx, model);
  const counts = await recordRevisions(tx, batch, before);
  for (const { model, dimension } of refilled) await makeModelIndex(tx, model, dimension);
  // The embedded engine never counts its rows by itself, and without counts the planner reads every vector.
  if (batch.photographs.length > 100)
    await tx.$executeRaw`ANALYZE makers, entries, revisions, photographs, revision_photographs, retrieval.entry_words, retrieval.photograph_vectors`;
  return { makers, entries: created, ...counts };
}

/** Models whose index is better made afterwards: filling it row by row takes several times longer. */
async function modelsToRefill(
  tx: Tx,
  batch: Batch,
): Promise<readonly { model: string; dimension: number }[]> {
  const fresh = new Map<string, number>();
  for (const { vectors } of batch.photographs)
    for (const model of vectors?.keys() ?? []) fresh.set(model, (fresh.get(model) ?? 0) + 1);
  const rows = await tx.$queryRaw<{ model: string; dimension: number; n: number }[]>`
    SELECT models.model, models.dimension, count(v.model)::int AS n
    FROM retrieval.models LEFT JOIN retrieval.photograph_vectors AS v USING (model)
    WHERE models.state <> 'retired' GROUP BY models.model`;
  return rows.filter(({ model, n }) => {
    const arriving = fresh.get(model) ?? 0;
    return arriving > 100 && arriving > n / 2;
  });
}

const distinct = (values: readonly string[]): string[] => [...new Set(values)];
