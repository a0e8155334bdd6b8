import { closeUp } from "../close-up.ts";
import { type Features, findFeatures } from "../features.ts";
import { openCv } from "../opencv.ts";
import { verify } from "../verify.ts";
import type { Sample } from "./folders.ts";
import type { RankedClass } from "./rank.ts";

/** Classes, best first. */
type Ranking = readonly RankedClass[];

/** Puts the best classes of a ranking into another order. */
export type Rerank = (queryPath: string, ranking: Ranking) => Promise<Ranking>;

/** Classes that are looked at. */
const BEST = 50;
/** What the logarithm of the points that agree adds to a similarity; chosen on held-out photographs of the demo. */
const WEIGHT = 0.03;
/** Smaller and fewer than when two photographs are compared: fifty pairs take about as long as one does there. */
const SIDE = 240;
const MOST = 600;

/** Re-ranks the best 50 classes by how well their references can be laid over the query. */
export async function createRerank(references: readonly Sample[]): Promise<Rerank> {
  const { cv } = await openCv();
  const known = new Map<string, Features>();
  const featuresOf = async (path: string) => {
    const features = known.get(path) ?? findFeatures(cv, await closeUp(path, null, SIDE), MOST);
    known.set(path, features);
    return features;
  };
  // As on a host, the references' features are there before anyone asks.
  for (const { path } of references) await featuresOf(path);
  return async (queryPath, ranking) => {
    const query = findFeatures(cv, await closeUp(queryPath, null, SIDE), MOST);
    const reached: { label: string; similarity: number }[] = [];
    for (const { label, similarity } of ranking.slice(0, BEST)) {
      let most = 0;
      for (const { path } of references.filter((each) => each.label === label)) {
        const { plausible, inliers } = verify(cv, query, await featuresOf(path));
        if (plausible) most = Math.max(most, inliers);
      }
      reached.push({ label, similarity: similarity + WEIGHT * Math.log1p(most) });
    }
    return [...reached.sort((a, b) => b.similarity - a.similarity), ...ranking.slice(BEST)];
  };
}
