import type { FieldError } from "#core/field-error";
import { NOTHING_KNOWN } from "#core/look-ups/knowledge";
import type { Region } from "#core/photographs/region";
import { ok, type Result } from "#core/result";
import { rankMark } from "./look-up/rank-mark.ts";
import { type NearestEntry, showNearest } from "./look-up/show-nearest.ts";
import type { Blobs, Embedder, Entries, Nearest, Readings } from "./ports.ts";

type Needs = {
  readonly blobs: Blobs;
  readonly nearest: Nearest;
  readonly readings: Readings;
  readonly entries: Entries;
  /** The model that answers look-ups now. */
  readonly chosen: () => Promise<Result<Embedder, FieldError>>;
};

/**
 * Finds the entries nearest to the marks of some photographs, so that a duplicate is seen before it is written.
 * @param except slug of the entry that they belong to
 */
export async function findAlike(
  { blobs, chosen, entries, ...needs }: Needs,
  photographs: readonly { readonly sha256: string; readonly region: Region }[],
  except: string | null,
): Promise<Result<readonly NearestEntry[], FieldError>> {
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
  const ranked = fused.map(({ entry, ranked: near }) => ({
    entry,
    similarity: near?.best.similarity ?? null,
  }));
  return ok(await showNearest(entries, embedder.value, ranked, except));
}
