import type { LookUpMatch, LookUpView } from "#core/look-ups/look-up";
import { likenessOf } from "#core/similarity/likeness";
import type { Clock, Embedders, Entries, KeptLookUp, LookUps } from "./ports.ts";

type Needs = {
  readonly entries: Entries;
  readonly lookUps: LookUps;
  readonly embedders: Embedders;
  readonly clock: Clock;
};

/** A kept look-up with its entries as they stand now; null when it never was, or its time is over. */
export async function showLookUp(
  needs: Needs,
  id: string,
): Promise<{ kept: KeptLookUp; view: LookUpView } | null> {
  const kept = await needs.lookUps.find(id);
  if (!kept || (kept.expiresAt !== null && kept.expiresAt <= needs.clock.now())) return null;
  return { kept, view: await resolve(needs, kept) };
}

async function resolve({ entries, embedders }: Needs, kept: KeptLookUp): Promise<LookUpView> {
  // A similarity means what it meant to the model that gave it.
  const { likeness } = (await embedders.find(kept.model)) ?? embedders.inPlace;
  const [summaries, photographs] = await Promise.all([
    entries.summaries(kept.matches.map((m) => m.entry)),
    entries.photographs(kept.matches.flatMap((m) => m.hit?.photographId ?? [])),
  ]);
  const matches = kept.matches.flatMap(({ entry: id, hit, ...said }): LookUpMatch[] => {
    const entry = summaries.get(id);
    const photograph = hit && (photographs.get(hit.photographId) ?? null);
    if (!entry || (hit && !photograph)) return [];
    const similarity = hit?.similarity ?? null;
    const likenessWord = similarity === null ? null : likenessOf(similarity, likeness);
    return [{ ...said, entry, photograph, similarity, likeness: likenessWord, turn: hit?.turn ?? 0 }];
  });
  return {
    id: kept.id,
    query: {
      sha256: kept.sha256,
      width: kept.width,
      height: kept.height,
      region: kept.region,
      framedBy: kept.framedBy,
    },
    asked: kept.asked,
    model: kept.model,
    noneFits: kept.noneFits,
    matches,
    timings: kept.timings,
    createdAt: kept.createdAt.toISOString(),
    expiresAt: kept.expiresAt?.toISOString() ?? null,
    searched: kept.searched,
  };
}
