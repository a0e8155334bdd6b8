import type { EntrySummary } from "#core/entries/entry";
import { type Likeness, likenessOf } from "#core/similarity/likeness";
import { NEIGHBOURS, rankEntries } from "#core/similarity/rank";
import type { Embedder, Entries, Nearest } from "./ports.ts";

type Needs = { readonly nearest: Nearest; readonly entries: Entries };

/** Entries shown: enough to see a duplicate. */
const SHOWN = 4;

export type NearestEntry = { readonly entry: EntrySummary; readonly likeness: Likeness };

/**
 * The entries that come nearest to recorded photographs by image, so that a duplicate is seen before it is verified.
 * @param photographs ids
 * @param except slug of the entry that they belong to
 */
export async function findNearestEntries(
  { nearest, entries }: Needs,
  embedder: Embedder,
  photographs: readonly string[],
  except: string,
): Promise<readonly NearestEntry[]> {
  const described = await nearest.describedBy(embedder.model, photographs);
  const queries = [...described.values()].map((each) => ({ ...each, turn: 0 }));
  if (queries.length === 0) return [];
  const ranked = rankEntries(await nearest.search(embedder.model, queries, NEIGHBOURS), SHOWN + 1);
  const summaries = await entries.summaries(ranked.map(({ entry }) => entry));
  return ranked
    .flatMap(({ entry, best }) => {
      const summary = summaries.get(entry);
      return summary && summary.slug !== except
        ? [{ entry: summary, likeness: likenessOf(best.similarity, embedder.likeness) }]
        : [];
    })
    .slice(0, SHOWN);
}
