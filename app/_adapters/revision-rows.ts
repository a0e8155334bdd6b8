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
  current: { entry: string; revision: string }[];
  words: {
    entry: string;
    title: string;
    maker: string | null;
    names: string;
    body: string;
    letters: string;
  }[];
};

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
  for (const data of chunks(rows.current))
    await tx.$executeRaw`UPDATE entries SET current_revision_id = next.revision
      FROM unnest(${data.map((c) => c.entry)}::uuid[], ${data.map((c) => c.revision)}::uuid[]) AS next (entry, revision)
      WHERE entries.id = next.entry`;
  for (const data of chunks(rows.words))
    await tx.$executeRaw`INSERT INTO retrieval.entry_words (entry_id, title, names, body, letters)
      SELECT w.entry, w.title, concat_ws(' ', w.names, makers.name), concat_ws(' ', w.body, makers.place), w.letters
      FROM unnest(${data.map((w) => w.entry)}::uuid[], ${data.map((w) => w.title)}::text[], ${data.map((w) => w.names)}::text[],
        ${data.map((w) => w.body)}::text[], ${data.map((w) => w.letters)}::text[],
        ${data.map((w) => w.maker)}::uuid[]) AS w (entry, title, names, body, letters, maker)
      LEFT JOIN makers ON makers.id = w.maker
      ON CONFLICT (entry_id) DO UPDATE SET title = excluded.title, names = excluded.names, body = excluded.body,
        letters = excluded.letters`;
}

/** Items in parts that fit one statement. */
export function* chunks<T>(items: readonly T[]): Generator<readonly T[]> {
  for (let start = 0; start < items.length; start += CHUNK) yield items.slice(start, start + CHUNK);
}
