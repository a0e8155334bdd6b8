import { NEIGHBOURS, rankEntries, WEIGHED } from "#core/similarity/rank";
import { type NearestEntry, showNearest } from "./look-up/show-nearest.ts";
import type { Embedder, Entries, Nearest } from "./ports.ts";

type Needs = { readonly nearest: Nearest; readonly entries: Entries };

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
  const ranked = rankEntries(await nearest.search(embedder.model, queries, NEIGHBOURS), WEIGHED);
  return showNearest(
    entries,
    embedder,
    ranked.map(({ entry, best }) => ({ entry, similarity: best.similarity })),
    except,
  );
}
