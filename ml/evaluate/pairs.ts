import { meanPairScores } from "../../app/_core/similarity/combine.ts";
import { COMPARED } from "../../app/_core/similarity/rank.ts";
import type { Described, Pair } from "../embed.ts";
import { type Known, rankTogether } from "./rank.ts";

/** One photograph of a query: what the model makes of each of its directions, and how similar these are to each reference. */
export type Seen = {
  readonly described: readonly Described[];
  readonly similarities: readonly Float64Array[];
};

/** Log-odds of pairs, as ml/embed.ts gives them. */
export type Judge = (pairs: readonly Pair[]) => Promise<readonly (number | null)[]>;

/**
 * What the details of the nearest classes' best photographs say, as log-odds by class, as a look-up asks it: the mean
 * over the query's photographs.
 */
export async function comparePairs(
  seen: readonly Seen[],
  references: readonly Known[],
  judge: Judge,
): Promise<ReadonlyMap<string, number>> {
  const near = rankTogether(
    seen.map(({ similarities }) => similarities),
    references,
  ).slice(0, COMPARED);
  const pairs = near.flatMap(({ label }) =>
    seen.flatMap((photograph) => {
      const pair = bestPair(photograph, references, label);
      return pair ? [{ label, ...pair }] : [];
    }),
  );
  return meanPairScores(
    pairs.map(({ label }) => label),
    await judge(pairs),
  );
}

/** The direction of the photograph and the reference of the class that are most alike. */
function bestPair(
  { described, similarities }: Seen,
  references: readonly Known[],
  label: string,
): Pair | null {
  let most = Number.NEGATIVE_INFINITY;
  let pair: Pair | null = null;
  for (const [i, reference] of references.entries()) {
    if (reference.label !== label) continue;
    for (const [turn, turned] of similarities.entries()) {
      const similarity = turned[i] ?? Number.NEGATIVE_INFINITY;
      const query = described[turn];
      if (!query || similarity <= most) continue;
      most = similarity;
      pair = { query, reference: reference.described };
    }
  }
  return pair;
}
