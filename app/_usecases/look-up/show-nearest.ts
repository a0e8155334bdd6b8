import type { EntrySummary } from "#core/entries/entry";
import { type Likeness, likenessOf } from "#core/similarity/likeness";
import type { Embedder, Entries } from "../ports.ts";

/** Entries shown: enough to see a duplicate. */
const SHOWN = 4;

/** An entry that comes near a photograph. */
export type NearestEntry = { readonly entry: EntrySummary; readonly likeness: Likeness };

/**
 * The first few of a ranking, as they are shown where a duplicate may be seen.
 * @param ranked best first; one without a similarity was found by something else and is left out
 * @param except slug of the entry that the photographs belong to
 */
export async function showNearest(
  entries: Entries,
  { likeness }: Pick<Embedder, "likeness">,
  ranked: readonly { readonly entry: string; readonly similarity: number | null }[],
  except: string | null,
): Promise<readonly NearestEntry[]> {
  const best = ranked.slice(0, SHOWN + 1);
  const summaries = await entries.summaries(best.map(({ entry }) => entry));
  return best
    .flatMap(({ entry, similarity }) => {
      const summary = summaries.get(entry);
      return summary && similarity !== null && summary.slug !== except
        ? [{ entry: summary, likeness: likenessOf(similarity, likeness) }]
        : [];
    })
    .slice(0, SHOWN);
}
