/** One stored photograph that resembles the query. */
export type Hit = {
  readonly photographId: string;
  readonly entry: string;
  /** Cosine of the angle between the two vectors, -1 to 1. */
  readonly similarity: number;
  /** By how many degrees clockwise the query was turned when it matched. */
  readonly turn: number;
};

/** Nearest photographs that are asked for in each direction of a query. */
export const NEIGHBOURS = 60;
/** Entries, the nearest first, whose details are compared with the query's. */
export const COMPARED = 24;
/** Entries that are weighed against one another, the nearest by their photographs. */
export const WEIGHED = 200;

/** An entry with its best hit. */
export type Ranked = { readonly entry: string; readonly best: Hit; readonly hits: number };

/**
 * Orders entries by their best photograph over all turns of the query; ties are broken by entry.
 * @returns at most `limit` entries, best first
 */
export function rankEntries(hits: readonly Hit[], limit: number): readonly Ranked[] {
  const byEntry = new Map<string, { best: Hit; photographs: Set<string> }>();
  for (const hit of hits) {
    const known = byEntry.get(hit.entry);
    if (!known) byEntry.set(hit.entry, { best: hit, photographs: new Set([hit.photographId]) });
    else {
      known.photographs.add(hit.photographId);
      if (isBetter(hit, known.best)) known.best = hit;
    }
  }
  return [...byEntry]
    .map(([entry, { best, photographs }]) => ({ entry, best, hits: photographs.size }))
    .sort((a, b) => b.best.similarity - a.best.similarity || (a.entry < b.entry ? -1 : 1))
    .slice(0, limit);
}

/** A total order of hits: nearer first; ties are broken by photograph and turn. */
export function isBetter(a: Hit, b: Hit): boolean {
  if (a.similarity !== b.similarity) return a.similarity > b.similarity;
  return a.photographId < b.photographId || (a.photographId === b.photographId && a.turn < b.turn);
}
