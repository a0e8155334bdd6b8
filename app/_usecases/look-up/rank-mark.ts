import type { KeptMatch } from "#core/look-ups/kept-look-up";
import { type Knowledge, knowsSomething } from "#core/look-ups/knowledge";
import { parseLegibleLetters } from "#core/reading/legible-letters";
import { type Chances, chancesOf } from "#core/similarity/chances";
import {
  type CombinedRank,
  combineSights,
  meanPairScores,
  type Sight,
  unseen,
} from "#core/similarity/combine";
import { findingsOf } from "#core/similarity/findings";
import { type Candidate, type Fused, fuse } from "#core/similarity/fuse";
import { COMPARED, type Hit, NEIGHBOURS, rankEntries, WEIGHED } from "#core/similarity/rank";
import { weigh } from "#core/similarity/weigh";
import type { Embedder, Nearest, QueryVector, Readings } from "../ports.ts";

type Needs = { readonly nearest: Nearest; readonly readings: Readings };

/** Entries in an answer. */
export const ENTRIES = 24;
/** Entries taken from those that the letters find. */
const READ = 60;

/** A photograph as the model sees it, with its place among those asked with, from 1. */
export type Described = {
  readonly photograph: number;
  readonly vectors: readonly QueryVector[];
  /** What it found already; null when it was not searched with yet. */
  readonly hits: readonly Hit[] | null;
  /** How many parts of it were tried, of which this one found the nearest. */
  readonly tries: number;
};

/** A mark, by the photographs that show it and what is known of it besides. */
type MarkAsked = {
  readonly mark: number;
  readonly known: Knowledge;
  readonly photographs: readonly Described[];
};

/** A mark with every entry that may be it, best first, and how each photograph sees each of them. */
export type RankedMark = MarkAsked & {
  readonly fused: readonly Fused[];
  /** How likely each entry is, and that none fits; null for a model that no probabilities were fitted for. */
  readonly chances: Chances | null;
  readonly seen: ReadonlyMap<string, CombinedRank["seen"]>;
};

/** Ranks the entries for one mark: those its photographs find, and those that only the letters find. */
export async function rankMark(needs: Needs, embedder: Embedder, asked: MarkAsked): Promise<RankedMark> {
  const near = await findNear(needs, embedder, asked);
  const letters = parseLegibleLetters(asked.known.letters);
  const read = letters.ok && letters.value ? await needs.readings.find(letters.value, READ) : [];
  const only = read.filter((entry) => !near.some((ranked) => ranked.entry === entry));
  const far = await measureFar(needs, embedder, asked, only);
  return placeEntries(needs, embedder, asked, near, only, far);
}

/**
 * Entries by all photographs of a mark. What one photograph finds and another does not is measured for that other one
 * too, however far away it is.
 */
async function findNear(
  { nearest }: Needs,
  { model }: Embedder,
  { photographs }: MarkAsked,
): Promise<readonly CombinedRank[]> {
  const sights: Sight[] = [];
  for (const { photograph, vectors, hits } of photographs)
    sights.push({
      photograph,
      ranked: rankEntries(hits ?? (await nearest.search(model, vectors, NEIGHBOURS)), WEIGHED),
    });
  const lacking = unseen(sights);
  for (const { photograph, vectors } of photographs) {
    const entries = lacking.get(photograph) ?? [];
    if (entries.length === 0) continue;
    const ranked = rankEntries(await nearest.among(model, vectors, entries), entries.length);
    // These photographs of the entry were measured, but they are not among the nearest.
    sights.push({ photograph, ranked: ranked.map((each) => ({ ...each, hits: 0 })) });
  }
  return combineSights(sights, WEIGHED);
}

/** Measures entries that no photograph found. */
export async function measureFar(
  { nearest }: Needs,
  { model }: Embedder,
  { photographs }: MarkAsked,
  entries: readonly string[],
): Promise<readonly CombinedRank[]> {
  if (entries.length === 0) return [];
  const sights: Sight[] = [];
  for (const { photograph, vectors } of photographs)
    sights.push({
      photograph,
      ranked: rankEntries(await nearest.among(model, vectors, entries), entries.length),
    });
  return combineSights(sights, entries.length);
}

/**
 * Gives entries their places, with what is known besides weighed in.
 * @param others entries beside the near ones; those without a photograph are in no ranking
 */
export async function placeEntries(
  { nearest, readings }: Needs,
  embedder: Embedder,
  asked: MarkAsked,
  near: readonly CombinedRank[],
  others: readonly string[],
  far: readonly CombinedRank[],
): Promise<RankedMark> {
  const ranks = new Map([...near, ...far].map((ranked) => [ranked.entry, ranked]));
  const entries = [...near.map(({ entry }) => entry), ...others];
  const facts = knowsSomething(asked.known) ? await readings.facts(entries) : new Map();
  const listed = new Set(near.slice(0, ENTRIES).map(({ entry }) => entry));
  const candidates = entries.map((entry): Candidate => {
    const recorded = facts.get(entry);
    const findings = recorded ? findingsOf(asked.known, recorded) : [];
    const spelt = findings.some(({ aspect, stands }) => aspect === "letters" && stands === "for");
    const foundBy = spelt && !listed.has(entry) ? "letters" : "photograph";
    return { entry, ranked: ranks.get(entry) ?? null, foundBy, findings };
  });
  const pairScores = await comparePairs(nearest, embedder, asked, near);
  const tries = Math.max(...asked.photographs.map((each) => each.tries));
  const chances = await reckonChances(nearest, embedder, candidates, pairScores, tries);
  return {
    ...asked,
    chances,
    fused: fuse(candidates, embedder.likeness, candidates.length, chances?.odds),
    seen: new Map([...ranks].map(([entry, { seen }]) => [entry, seen])),
  };
}

/**
 * What the details of the nearest entries' best photographs say, as log-odds by entry: the mean over the photographs of
 * the mark that see the entry.
 */
async function comparePairs(
  nearest: Nearest,
  embedder: Embedder,
  { photographs }: MarkAsked,
  near: readonly CombinedRank[],
): Promise<ReadonlyMap<string, number>> {
  const haveDetails = photographs.some(({ vectors }) => vectors.some(({ details }) => details !== null));
  // What no curve was fitted for would not be weighed.
  if (!haveDetails || !embedder.calibration?.reranked) return new Map();
  const sights = near.slice(0, COMPARED).flatMap(({ entry, best, seen }) => {
    const all = seen.length > 0 ? seen : [{ photograph: photographs[0]?.photograph ?? 1, hit: best }];
    return all.map(({ photograph, hit }) => ({ entry, photograph, hit }));
  });
  const ids = [...new Set(sights.map(({ hit }) => hit.photographId))];
  const described = await nearest.describedBy(embedder.model, ids);
  const pairs = sights.flatMap(({ entry, photograph, hit }) => {
    const own = photographs.find((each) => each.photograph === photograph);
    const query = own?.vectors.find(({ turn }) => turn === hit.turn);
    const reference = described.get(hit.photographId);
    return query && reference ? [{ entry, query, reference }] : [];
  });
  return meanPairScores(
    pairs.map(({ entry }) => entry),
    await embedder.judge(pairs),
  );
}

/**
 * Probabilities of all that was weighed; null for a model that none were fitted for. With two parts of a photograph to
 * choose from, chance brings one of the entries near as often as among twice as many.
 */
async function reckonChances(
  nearest: Nearest,
  { model, calibration }: Embedder,
  candidates: readonly Candidate[],
  pairScores: ReadonlyMap<string, number>,
  tries: number,
): Promise<Chances | null> {
  if (!calibration) return null;
  const listed = candidates.map(({ entry }) => entry);
  const [photographs, entries] = await Promise.all([
    nearest.photographsOf(model, listed),
    nearest.countEntries(),
  ]);
  return chancesOf(weigh(candidates, { photographs, pairScores }), entries * tries, calibration);
}

/** An entry of a ranking as it is kept. */
export function toMatch(
  { entry, ranked, foundBy, findings }: Fused,
  { seen, chances }: RankedMark,
): KeptMatch {
  return {
    entry,
    hit: ranked?.best ?? null,
    photographsNear: ranked?.hits ?? 0,
    foundBy,
    findings,
    probability: chances?.of.get(entry) ?? null,
    seen: seen.get(entry) ?? [],
  };
}
