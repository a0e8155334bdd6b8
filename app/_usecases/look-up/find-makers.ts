import type { KeptMaker } from "#core/look-ups/kept-look-up";
import { comesNear } from "#core/similarity/fuse";
import { rankMakers } from "#core/similarity/makers-of-marks";
import type { Embedder, Entries, Nearest, Readings } from "../ports.ts";
import { ENTRIES, measureFar, placeEntries, type RankedMark, toMatch } from "./rank-mark.ts";

type Needs = { readonly nearest: Nearest; readonly readings: Readings; readonly entries: Entries };

/** Makers in an answer. */
const MAKERS = 5;

/** Makers of whom several entries come near several marks; each of their entries is measured for every mark. */
export async function findMakers(
  needs: Needs,
  embedder: Embedder,
  marks: readonly RankedMark[],
): Promise<readonly KeptMaker[]> {
  const listed = marks.flatMap(({ fused }) => fused.slice(0, ENTRIES).map(({ entry }) => entry));
  const makerOf = await needs.entries.ofMakers(listed);
  const measured: RankedMark[] = [];
  for (const ranked of marks) {
    const own = ranked.fused.filter(({ entry }) => makerOf.has(entry));
    const others = [...makerOf.keys()].filter((entry) => !own.some((each) => each.entry === entry));
    const far = await measureFar(needs, embedder, ranked, others);
    const rest = await placeEntries(needs, embedder, ranked, [], others, far);
    measured.push({ ...rest, fused: [...own, ...rest.fused], seen: new Map([...ranked.seen, ...rest.seen]) });
  }
  const entries = measured.flatMap(({ mark, fused }) => {
    const [nearest] = marks.find((each) => each.mark === mark)?.fused ?? [];
    return fused.flatMap((each) => {
      const maker = makerOf.get(each.entry);
      if (maker === undefined) return [];
      const { entry, score } = each;
      const near = entry === nearest?.entry || comesNear(each, embedder.likeness);
      return [{ maker, mark, entry, score, comesNear: near }];
    });
  });
  return rankMakers(entries, marks.length, MAKERS).map(({ maker, answers }) => ({
    maker,
    answers: answers.flatMap(({ mark, entry }) => {
      const ranked = measured.find((each) => each.mark === mark);
      const fused = ranked?.fused.find((each) => each.entry === entry);
      return ranked && fused ? [{ mark, match: toMatch(fused, ranked) }] : [];
    }),
  }));
}
