import type { Prisma } from "./generated/client.ts";

type Tx = Prisma.TransactionClient;

/** Rows in one statement; a statement takes 32,767 parameters at most. */
const CHUNK = 500;

/** What a batch of new revisions adds to the tables. */
export type RevisionRows = {
  revisions: Prisma.RevisionCreateManyInput[];
  parents: Prisma.RevisionParentCreateManyInput[];
  photographs: Prisma.PhotographCreateManyInput[];
  vectors: { id: string; model: string; vector: string; details: string | null }[];
  shown: Prisma.RevisionPhotographCreateManyInput[];
};

export const emptyRows = (): RevisionRows => ({
  revisions: [],
  parents: [],
  photographs: [],
  vectors: [],
  shown: [],
});

/** Writes a batch, table after table, in the order that references between them ask for. */
export async function writeRevisionRows(tx: Tx, rows: RevisionRows): Promise<void> {
  for (const data of chunks(rows.photographs)) await tx.photograph.createMany({ data: [...data] });
  for (const data of chunks(rows.vectors))
    await tx.$executeRaw`INSERT INTO retrieval.photograph_vectors (photograph_id, model, vector, details)
      SELECT id, model, vector::vector, decode(details, 'base64') FROM unnest(${data.map((v) => v.id)}::uuid[], ${data.map((v) => v.model)}::text[],
        ${data.map((v) => v.vector)}::text[], ${data.map((v) => v.details)}::text[]) AS v (id, model, vector, details)
      ON CONFLICT DO NOTHING`;
  for (const data of chunks(rows.revisions)) await tx.revision.createMany({ data: [...data] });
  for (const data of chunks(rows.parents)) await tx.revisionParent.createMany({ data: [...data] });
  for (const data of chunks(rows.shown)) await tx.revisionPhotograph.createMany({ data: [...data] });
}

/** Items in parts that fit one statement. */
export function* chunks<T>(items: readonly T[]): Generator<readonly T[]> {
  for (let start = 0; start < items.length; start += CHUNK) yield items.slice(start, start + CHUNK);
}
