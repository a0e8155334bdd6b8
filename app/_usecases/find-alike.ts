import type { EntrySummary } from "#core/entries/entry";
import type { FieldError } from "#core/field-error";
import { NOTHING_KNOWN } from "#core/look-ups/knowledge";
import type { Region } from "#core/photographs/region";
import { ok, type Result } from "#core/result";
import { type Likeness, likenessOf } from "#core/similarity/likeness";
import { rankMark } from "./look-up/rank-mark.ts";
import type { Blobs, Embedder, Entries, Nearest, Readings } from "./ports.ts";

type Needs = {
  readonly blobs: Blobs;
  readonly nearest: Nearest;
  readonly readings: Readings;
  readonly entries: Entries;
  /** The model that answers look-ups now. */
  readonly chosen: () => Promise<Result<Embedder, FieldError>>;
};

/** Entries shown: enough to see a duplicate. */
const ALIKE = 4;

/** An entry that comes near a photograph. */
export type Alike = { readonly entry: EntrySummary; readonly likeness: Likeness };

/**
 * Finds the entries nearest to the marks of some photographs, so that a duplicate is seen before it is written.
 * @param except slug of the entry that they belong to
 */
export async function findAlike(
  { blobs, chosen, entries, ...needs }: Needs,
  photographs: readonly { readonly sha256: string; readonly region: Region }[],
  except: string | null,
): Promise<Result<readonly Alike[], FieldError>> {
  const embedder = await chosen();
  if (!embedder.ok) return embedder;
  const described = [];
  for (const [i, { sha256, region }] of photographs.entries()) {
    const bytes = await blobs.get(sha256);
    if (!bytes) continue;
    const { vectors } = await embedder.value.embedQuery(bytes, region);
    described.push({ photograph: i + 1, vectors, hits: null, tries: 1 });
  }
  if (described.length === 0) return ok([]);
  const mark = { mark: 1, known: NOTHING_KNOWN, photographs: described };
  const { fused } = await rankMark(needs, embedder.value, mark);
  const best = fused.slice(0, ALIKE + 1);
  const summaries = await entries.summaries(best.map(({ entry }) => entry));
  const alike = best.flatMap(({ entry, ranked }) => {
    const summary = summaries.get(entry);
    return summary && ranked && summary.slug !== except
      ? [{ entry: summary, likeness: likenessOf(ranked.best.similarity, embedder.value.likeness) }]
      : [];
  });
  return ok(alike.slice(0, ALIKE));
}
