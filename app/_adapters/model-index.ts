import { createHash } from "node:crypto";
import { Prisma } from "./generated/client.ts";

type Tx = Prisma.TransactionClient;

/** Is it the name and version of a model, such as `marks@1.0.0`? Only such a text goes into a statement as it is. */
export function isModelName(text: string): boolean {
  return /^[a-z][a-z0-9-]*@\d+\.\d+\.\d+$/.test(text);
}

/**
 * "This vector is the model's", as a condition in a statement. The name stands in the text and not as a parameter,
 * since the planner must see it to know that the model's own index serves the query.
 */
export function isOfModel(model: string): Prisma.Sql {
  if (!isModelName(model)) throw new RangeError(`model must be name@1.2.3. Received ${model}.`);
  return Prisma.raw(`model = '${model}'`);
}

/** The column as the model's index has it: with the length of its vectors. */
export function vectorOfLength(dimension: number): Prisma.Sql {
  if (!Number.isInteger(dimension) || dimension < 1 || dimension > 2000)
    throw new RangeError(`dimension must be 1 to 2000. Received ${dimension}.`);
  return Prisma.raw(`(vector::public.vector(${dimension}))`);
}

/**
 * Makes the index of a model's vectors, unless it is there. Each model has one of its own: in one index over all,
 * a search would meet the neighbours of every model and come back short.
 */
export async function makeModelIndex(tx: Tx, model: string, dimension: number): Promise<void> {
  await tx.$executeRaw`CREATE INDEX IF NOT EXISTS ${nameOf(model)} ON retrieval.photograph_vectors
    USING hnsw (${vectorOfLength(dimension)} public.vector_ip_ops) WITH (m = 16, ef_construction = 100)
    WHERE ${isOfModel(model)}`;
}

export async function dropModelIndex(tx: Tx, model: string): Promise<void> {
  await tx.$executeRaw`DROP INDEX IF EXISTS retrieval.${nameOf(model)}`;
}

/** A hash keeps it within the 63 bytes of a name; the migration that made the first index does the same. */
function nameOf(model: string): Prisma.Sql {
  return Prisma.raw(`nearest_${createHash("md5").update(model).digest("hex")}`);
}
