import { createNearest } from "#adapters/nearest";
import type { QueryVector } from "#usecases/ports";
import type { Live } from "#web/live";
import type { Query } from "./queries.ts";

/** How well the index finds what reading every vector finds. */
export type Recall = {
  /** Share of the exact ten nearest photographs that the index also returns, over all turns of all queries. */
  readonly at10: number;
  readonly indexMs: readonly number[];
  readonly exactMs: readonly number[];
};

/** Asks the index and the exact search the same questions. */
export async function measureRecall(wired: Live, queries: readonly Query[]): Promise<Recall> {
  const exact = createNearest(wired.database, true);
  const { model } = wired.embedders.inPlace;
  const shares: number[] = [];
  const indexMs: number[] = [];
  const exactMs: number[] = [];
  for (const { bytes, box } of queries) {
    const { vectors } = await wired.embedders.inPlace.embedQuery(bytes, { ...box, turn: 0 });
    const found = await timed(indexMs, () => wired.nearest.search(model, vectors, 10));
    const wanted = await timed(exactMs, () => exact.search(model, vectors, 10));
    for (const { turn } of vectors satisfies readonly QueryVector[]) {
      const ids = new Set(found.filter((hit) => hit.turn === turn).map((hit) => hit.photographId));
      const truth = wanted.filter((hit) => hit.turn === turn);
      shares.push(truth.filter((hit) => ids.has(hit.photographId)).length / truth.length);
    }
  }
  return { at10: shares.reduce((sum, share) => sum + share, 0) / shares.length, indexMs, exactMs };
}

async function timed<T>(times: number[], work: () => Promise<T>): Promise<T> {
  const began = performance.now();
  const result = await work();
  times.push(performance.now() - began);
  return result;
}
