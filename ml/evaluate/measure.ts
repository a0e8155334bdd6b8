import { decode, type Patch } from "../preprocess.ts";
import type { Sample } from "./folders.ts";
import type { Method } from "./method.ts";
import { areaUnderRoc, averagePrecision, mean, median, recallAt } from "./metrics.ts";
import type { Rerank } from "./verified.ts";

/** What one method reaches on one pair of folders. */
export type Figures = {
  readonly references: number;
  readonly classes: number;
  readonly queries: number;
  readonly recall1: number;
  readonly recall5: number;
  readonly recall10: number;
  readonly map: number;
  /** Present against absent marks by their best similarity; null when there were no absent ones. */
  readonly auroc: number | null;
  /** From the encoded photograph to the ranked classes. */
  readonly medianMs: number;
};

export type Progress = (what: string, done: number, of: number) => void;

type Reference = { readonly label: string; readonly vector: Float32Array };

/**
 * Runs a method over references, queries and photographs of absent marks. A class is as similar as the best of
 * its references in the best direction of the query; ties are broken by the name of the class.
 * @param rerank puts each query's best classes into another order
 * @throws Error naming the photograph that cannot be read
 */
export async function measure(
  method: Method,
  references: readonly Sample[],
  queries: readonly Sample[],
  absent: readonly Sample[],
  progress: Progress,
  rerank: Rerank = async (_, ranking) => ranking,
): Promise<Figures> {
  const known: Reference[] = [];
  for (const [i, { label, path }] of references.entries()) {
    known.push({ label, vector: await method.reference(await read(path)) });
    progress(`${method.name}: references`, i + 1, references.length);
  }
  const ranks: number[] = [];
  const precisions: number[] = [];
  const best: number[] = [];
  const milliseconds: number[] = [];
  for (const [i, { label, path }] of queries.entries()) {
    const before = performance.now();
    const ranking = await rerank(path, rank(await method.query(await read(path)), known));
    milliseconds.push(performance.now() - before);
    ranks.push(1 + ranking.findIndex((r) => r.label === label));
    precisions.push(
      averagePrecision(
        ranking.map((r) => r.label === label),
        1,
      ),
    );
    best.push(ranking[0]?.similarity ?? Number.NaN);
    progress(`${method.name}: queries`, i + 1, queries.length);
  }
  const strangers: number[] = [];
  for (const [i, { path }] of absent.entries()) {
    const ranking = await rerank(path, rank(await method.query(await read(path)), known));
    strangers.push(ranking[0]?.similarity ?? Number.NaN);
    progress(`${method.name}: absent`, i + 1, absent.length);
  }
  return {
    references: references.length,
    classes: new Set(references.map((r) => r.label)).size,
    queries: queries.length,
    recall1: recallAt(1, ranks),
    recall5: recallAt(5, ranks),
    recall10: recallAt(10, ranks),
    map: mean(precisions),
    auroc: absent.length > 0 ? areaUnderRoc(best, strangers) : null,
    medianMs: median(milliseconds),
  };
}

/** Classes by similarity, best first. */
export function rank(query: readonly Float32Array[], references: readonly Reference[]) {
  const best = new Map<string, number>();
  for (const { label, vector } of references) {
    let similarity = best.get(label) ?? Number.NEGATIVE_INFINITY;
    for (const turned of query) similarity = Math.max(similarity, dot(turned, vector));
    best.set(label, similarity);
  }
  return [...best]
    .map(([label, similarity]) => ({ label, similarity }))
    .sort((a, b) => b.similarity - a.similarity || (a.label < b.label ? -1 : 1));
}

async function read(path: string): Promise<Patch> {
  return decode(path).catch((cause: unknown) => {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`${path}: must be a photograph that can be decoded. Received: ${why}`, { cause });
  });
}

function dot(a: Float32Array, b: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}
