import { type Hit, isBetter, type Ranked } from "./rank.ts";

/** How the entries rank for one photograph of a mark. */
export type Sight = {
  /** Its place among the photographs asked with, from 1. */
  readonly photograph: number;
  readonly ranked: readonly Ranked[];
};

/** An entry as all photographs of a mark see it together: `best.similarity` is the combined one. */
export type CombinedRank = Ranked & {
  readonly seen: readonly { readonly photograph: number; readonly hit: Hit }[];
};

/**
 * Combines what several photographs of one mark say of one entry into one similarity: halfway between their mean and
 * the best of them. Each photograph counts, since all show the mark; and the best counts for more, since a photograph
 * in which the mark can hardly be seen says little against anything. The order of the photographs does not matter, one
 * photograph keeps its own similarity, and so do several that agree, so that the limits of likeness go on meaning what
 * they mean.
 *
 * Chosen on held-out validation designs among means, maxima, medians, mean log-odds, softened sums and similarities
 * normalised by photograph; the table is in ml/train/README.md. It has no constant that another model would change.
 * @param similarities cosines, one for each photograph, -1 to 1; at least one
 */
export function combineSimilarities(similarities: readonly number[]): number {
  const mean = similarities.reduce((sum, each) => sum + each, 0) / similarities.length;
  return (mean + Math.max(...similarities)) / 2;
}

/**
 * One ranking from several photographs of one mark; ties are broken by entry. An entry is shown by the hit of the
 * photograph that resembles it most, with the similarity that all come to. One photograph gives its own ranking.
 * @param sights each must rank the same entries: see `unseen`; an entry that one lacks is left to the others
 * @returns at most `limit` entries, best first
 */
export function combineSights(sights: readonly Sight[], limit: number): readonly CombinedRank[] {
  const byEntry = new Map<string, { photograph: number; ranked: Ranked }[]>();
  for (const { photograph, ranked } of sights)
    for (const each of ranked)
      byEntry.set(each.entry, [...(byEntry.get(each.entry) ?? []), { photograph, ranked: each }]);
  return [...byEntry]
    .map(([entry, seenBy]): CombinedRank => {
      const seen = seenBy.map(({ photograph, ranked }) => ({ photograph, hit: ranked.best }));
      const similarity = combineSimilarities(seen.map(({ hit }) => hit.similarity));
      const nearest = seen.map(({ hit }) => hit).reduce((a, b) => (isBetter(b, a) ? b : a));
      const hits = Math.max(...seenBy.map(({ ranked }) => ranked.hits));
      return { entry, best: { ...nearest, similarity }, hits, seen };
    })
    .sort((a, b) => b.best.similarity - a.best.similarity || (a.entry < b.entry ? -1 : 1))
    .slice(0, limit);
}

/** By photograph, the entries that others saw and it did not: their similarity must be asked for before combining. */
export function unseen(sights: readonly Sight[]): ReadonlyMap<number, readonly string[]> {
  const all = [...new Set(sights.flatMap(({ ranked }) => ranked.map(({ entry }) => entry)))];
  return new Map(
    sights.map(({ photograph, ranked }) => {
      const own = new Set(ranked.map(({ entry }) => entry));
      return [photograph, all.filter((entry) => !own.has(entry))];
    }),
  );
}

/**
 * One log-odds for each entry from what was judged of its pairs: the mean over the photographs of the mark.
 * @param entries whose pair each of `odds` judges
 * @param odds null where there was nothing to judge; an entry with nothing else is missing from the answer
 */
export function meanPairScores(
  entries: readonly string[],
  odds: readonly (number | null)[],
): ReadonlyMap<string, number> {
  const by = new Map<string, number[]>();
  for (const [i, entry] of entries.entries()) {
    const score = odds[i];
    if (typeof score === "number") by.set(entry, [...(by.get(entry) ?? []), score]);
  }
  return new Map(
    [...by].map(([entry, scores]) => [entry, scores.reduce((a, b) => a + b, 0) / scores.length]),
  );
}
