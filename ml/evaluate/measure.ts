import { combineSimilarities } from "../../app/_core/similarity/combine.ts";
import { decode, type Patch } from "../preprocess.ts";
import type { Sample } from "./folders.ts";
import type { Method } from "./method.ts";
import { areaUnderRoc, averagePrecision, mean, median, recallAt } from "./metrics.ts";
import type { Rerank } from "./verified.ts";

/** What one method reaches on one pair of folders. */
export type Figures = {
  readonly references: number;
  readonly classes: number;
  /** Photographs, or with several of a mark together, marks. */
  readonly queries: number;
  readonly recall1: number;
  readonly recall5: number;
  readonly recall10: number;
  readonly map: number;
  /** Present against absent marks by their best similarity; null when there were no absent ones. */
  readonly auroc: number | null;
  /** From the encoded photographs of a query to the ranked classes. */
  readonly medianMs: number;
};

export type Progress = (what: string, done: number, of: number) => void;

/** Photographs that are asked together, of one class. */
export type Query = { readonly label: string; readonly paths: readonly string[] };

/** Each photograph by itself. */
export const oneByOne = (samples: readonly Sample[]): readonly Query[] =>
  samples.map(({ label, path }) => ({ label, paths: [path] }));

/** All photographs of a class as several photographs of one mark; those of no class stay by themselves. */
export function together(samples: readonly Sample[]): readonly Query[] {
  const classes = new Map<string, string[]>();
  for (const { label, path } of samples) {
    const key = label === "" ? path : label;
    classes.set(key, [...(classes.get(key) ?? []), path]);
  }
  return [...classes].map(([label, paths]) => ({ label, paths }));
}

type Reference = { readonly label: string; readonly vector: Float32Array };

/**
 * Runs a method over references, queries and photographs of absent marks. A class is as similar as the best of
 * its references in the best direction of the query; ties are broken by the name of the class. What several
 * photographs of a query say is combined as a look-up combines it.
 * @param rerank puts each query's best classes into another order, by the query's first photograph
 * @throws Error naming the photograph that cannot be read
 */
export async function measure(
  method: Method,
  references: readonly Sample[],
  queries: readonly Query[],
  absent: readonly Query[],
  progress: Progress,
  rerank: Rerank = async (_, ranking) => ranking,
): Promise<Figures> {
  const known: Reference[] = [];
  for (const [i, { label, path }] of references.entries()) {
    known.push({ label, vector: await method.reference(await read(path)) });
    progress(`${method.name}: references`, i + 1, references.length);
  }
  const ask = async ([first = "", ...others]: readonly string[]) => {
    const rankings = [rank(await method.query(await read(first)), known)];
    for (const path of others) rankings.push(rank(await method.query(await read(path)), known));
    return rerank(first, combine(rankings));
  };
  const ranks: number[] = [];
  const precisions: number[] = [];
  const best: number[] = [];
  const milliseconds: number[] = [];
  for (const [i, { label, paths }] of queries.entries()) {
    const before = performance.now();
    const ranking = await ask(paths);
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
  for (const [i, { paths }] of absent.entries()) {
    const ranking = await ask(paths);
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

type Ranking = readonly { readonly label: string; readonly similarity: number }[];

/** Classes by similarity, best first. */
export function rank(query: readonly Float32Array[], references: readonly Reference[]): Ranking {
  const best = new Map<string, number>();
  for (const { label, vector } of references) {
    let similarity = best.get(label) ?? Number.NEGATIVE_INFINITY;
    for (const turned of query) similarity = Math.max(similarity, dot(turned, vector));
    best.set(label, similarity);
  }
  return [...best].map(([label, similarity]) => ({ label, similarity })).sort(byOrder);
}

const byOrder = (a: Ranking[number], b: Ranking[number]): number =>
  b.similarity - a.similarity || (a.label < b.label ? -1 : 1);

/** One ranking from those of several photographs, all over the same classes. */
function combine(rankings: readonly Ranking[]): Ranking {
  const classes = new Map<string, number[]>();
  for (const ranking of rankings)
    for (const { label, similarity } of ranking)
      classes.set(label, [...(classes.get(label) ?? []), similarity]);
  return [...classes]
    .map(([label, similarities]) => ({ label, similarity: combineSimilarities(similarities) }))
    .sort(byOrder);
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
