import type { KeptLookUp, KeptMaker, KeptMatch } from "#core/look-ups/kept-look-up";
import {
  type LookUpMatch,
  type LookUpView,
  type MakerOfMarks,
  marksOf,
  type SeenBy,
} from "#core/look-ups/look-up";
import { likenessOf } from "#core/similarity/likeness";
import { againstMaker } from "#core/similarity/makers-of-marks";
import type { Hit } from "#core/similarity/rank";
import type { Clock, Embedders, Entries, LookUps } from "./ports.ts";

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
  const ofMakers = kept.makers.flatMap(({ answers }) => answers.map(({ match }) => match));
  const all = [...kept.matches, ...kept.otherMarks.flatMap(({ matches }) => matches), ...ofMakers];
  const [summaries, photographs] = await Promise.all([
    entries.summaries(all.map(({ entry }) => entry)),
    entries.photographs(all.flatMap(({ hit }) => hit?.photographId ?? [])),
  ]);
  const show = ({ entry: id, hit, seen, ...said }: KeptMatch): LookUpMatch[] => {
    const entry = summaries.get(id);
    const photograph = hit && (photographs.get(hit.photographId) ?? null);
    if (!entry || (hit && !photograph)) return [];
    const similarity = hit?.similarity ?? null;
    const likenessWord = similarity === null ? null : likenessOf(similarity, likeness);
    const asked = seen ?? (hit ? [{ photograph: 1, hit }] : []);
    return [
      {
        ...said,
        entry,
        photograph,
        similarity,
        likeness: likenessWord,
        turn: hit?.turn ?? 0,
        seen: asked.map(toSeenBy),
      },
    ];
  };
  const [query] = kept.photographs;
  if (!query) throw new Error(`Look-up ${kept.id} has no photograph.`);
  const view: LookUpView = {
    id: kept.id,
    query,
    photographs: kept.photographs,
    asked: kept.asked,
    model: kept.model,
    noneFits: kept.noneFits,
    noneProbability: kept.noneProbability,
    calibrated: kept.calibrated,
    matches: kept.matches.flatMap(show),
    otherMarks: kept.otherMarks.map((each) => ({ ...each, matches: each.matches.flatMap(show) })),
    makers: [],
    timings: kept.timings,
    createdAt: kept.createdAt.toISOString(),
    expiresAt: kept.expiresAt?.toISOString() ?? null,
    searched: kept.searched,
  };
  return { ...view, makers: kept.makers.flatMap((each) => showMaker(view, each, show)) };
}

function toSeenBy({ photograph, hit }: { photograph: number; hit: Hit }): SeenBy {
  const { photographId, similarity, turn } = hit;
  return { photograph, reference: photographId, similarity, turn };
}

/** A maker with its entries as they stand now; left out when fewer than two of them are still its own. */
function showMaker(
  view: LookUpView,
  { maker: slug, answers: kept }: KeptMaker,
  show: (match: KeptMatch) => LookUpMatch[],
): readonly MakerOfMarks[] {
  const answers = kept.flatMap(({ mark, match }) => show(match).map((shown) => ({ mark, match: shown })));
  const own = answers.filter(({ match }) => match.entry.maker?.slug === slug);
  const maker = own[0]?.match.entry.maker;
  if (!maker || own.length < 2) return [];
  const firsts = marksOf(view).map(({ mark, matches: [first] }) => ({
    mark,
    entry: first ? { ...first.entry, maker: first.entry.maker?.slug ?? null } : null,
  }));
  const entries = own.map(({ mark, match }) => ({ mark, entry: match.entry }));
  return [{ maker, answers: own, against: againstMaker(slug, entries, firsts) }];
}
