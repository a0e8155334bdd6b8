import type { KeptMatch } from "#core/look-ups/kept-look-up";
import { type Knowledge, knowsSomething } from "#core/look-ups/knowledge";
import { parseLegibleLetters } from "#core/reading/legible-letters";
import { type Chances, chancesOf } from "#core/similarity/chances";
import { type CombinedRank, combineSights, type Sight, unseen } from "#core/similarity/combine";
import { findingsOf } from "#core/similarity/findings";
import { type Candidate, type Fused, fuse } from "#core/similarity/fuse";
import { NEIGHBOURS, rankEntries, WEIGHED } from "#core/similarity/rank";
import { weigh } from "#core/similarity/weigh";
import type { Embedder, Nearest, QueryVector, Readings } from "../ports.ts";

type Needs = { readonly nearest: Nearest; readonly readings: Readings };

/** Entries in an answer. */
export const ENTRIES = 24;
/** Entries taken from those that the letters find. */
const READ = 60;

/** A photograph as the model sees it, with its place among those asked with, from 1. */
export type Described = { readonly photograph: number; readonly vectors: readonly QueryVector[] };

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
  for (const { photograph, vectors } of photographs)
    sights.push({
      photograph,
      ranked: rankEntries(await nearest.search(model, vectors, NEIGHBOURS), WEIGHED),
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
  const chances = await reckonChances(nearest, embedder, candidates);
  return {
    ...asked,
    chances,
    fused: fuse(candidates, embedder.likeness, candidates.length, chances?.odds),
    seen: new Map([...ranks].map(([entry, { seen }]) => [entry, seen])),
  };
}

/** Probabilities of all that was weighed; null for a model that none were fitted for. */
async function reckonChances(
  nearest: Nearest,
  { model, calibration }: Embedder,
  candidates: readonly Candidate[],
): Promise<Chances | null> {
  if (!calibration) return null;
  const listed = candidates.map(({ entry }) => entry);
  const [photographs, entries] = await Promise.all([
    nearest.photographsOf(model, listed),
    nearest.countEntries(),
  ]);
  return chancesOf(weigh(candidates, { photographs, pairScores: new Map() }), entries, calibration);
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
