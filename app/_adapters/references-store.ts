import { fingerprint } from "#core/photographs/fingerprint";
import { fail, ok } from "#core/result";
import type { RecordedCounts, References } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { createEntries, entriesToRevise } from "./entries-to-revise.ts";
import type { Prisma } from "./generated/client.ts";
import { dropModelIndex, makeModelIndex } from "./model-index.ts";
import { recordMakers } from "./record-makers.ts";
import { recordRevisions } from "./record-revisions.ts";
import { Refused } from "./refused.ts";
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
      const rows = await prisma.photograph.findMany({
        where: { entry: { slug: { in: distinct(entries) } } },
        include: { entry: { select: { slug: true } } },
      });
      return new Set(rows.map((row) => fingerprint({ ...toPhotograph(row), entry: row.entry.slug })));
    },
    async record(batch) {
      try {
        const work = (tx: Tx) => recordAll(tx, batch);
        return ok(await prisma.$transaction(work, { timeout: LONGEST, maxWait: LONGEST }));
      } catch (error) {
        if (error instanceof Refused) return fail(error.refusal);
        throw error;
      }
    },
  };
}

async function recordAll(tx: Tx, batch: Batch): Promise<RecordedCounts> {
  const makers = await recordMakers(tx, batch.makers);
  const before = await entriesToRevise(tx, [
    ...batch.entries.map((e) => e.slug),
    ...batch.photographs.map((p) => p.entry),
  ]);
  const missing = batch.entries.map((e) => e.slug).filter((slug) => !before.has(slug));
  for (const made of await createEntries(tx, missing)) before.set(made.slug, made);
  const refilled = await modelsToRefill(tx, batch);
  for (const { model } of refilled) await dropModelIndex(tx, model);
  const counts = await recordRevisions(tx, batch, before);
  for (const { model, dimension } of refilled) await makeModelIndex(tx, model, dimension);
  // The embedded engine never counts its rows by itself, and without counts the planner reads every vector.
  if (batch.photographs.length > 100)
    await tx.$executeRaw`ANALYZE makers, entries, revisions, photographs, revision_photographs, trail_links, retrieval.entry_words, retrieval.photograph_vectors`;
  return { makers, entries: missing.length, ...counts };
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
