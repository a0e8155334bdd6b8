import { type Calibration, parseCalibration } from "../../app/_core/similarity/calibration.ts";
import { chancesOf, type Weighed } from "../../app/_core/similarity/chances.ts";
import { rankEntries, WEIGHED } from "../../app/_core/similarity/rank.ts";
import { readCalibration } from "../model.ts";
import { type Known, nearest, rankTogether } from "./rank.ts";

/** Probabilities of an answer: the classes that were weighed, the likeliest first, and that none fits. */
export type Answered = {
  readonly labels: readonly string[];
  readonly first: number;
  readonly none: number;
};

/**
 * What a look-up weighs: the classes of the nearest photographs, with nothing known besides.
 * @param seen what each photograph of the query is similar to, as `compare` gives it
 */
export function weigh(
  seen: readonly (readonly Float64Array[])[],
  references: readonly Known[],
  pairScores: ReadonlyMap<string, number> = new Map(),
): readonly Weighed[] {
  const photographs = new Map<string, number>();
  for (const { label } of references) photographs.set(label, (photographs.get(label) ?? 0) + 1);
  const found = new Set(
    seen.flatMap((similarities) =>
      rankEntries(nearest(similarities, references), WEIGHED).map(({ entry }) => entry),
    ),
  );
  const candidates = rankTogether(seen, references).filter(({ label }) => found.has(label));
  return candidates.slice(0, WEIGHED).map(({ label: entry, similarity }) => ({
    entry,
    similarity,
    photographs: photographs.get(entry) ?? 1,
    pairScore: pairScores.get(entry) ?? null,
    evidence: 0,
    lettersAgree: false,
  }));
}

/** Probabilities as the shipped pipeline reckons them. */
export function answer(weighed: readonly Weighed[], entries: number, calibration: Calibration): Answered {
  const { of, odds, none } = chancesOf(weighed, entries, calibration);
  const labels = weighed
    .map(({ entry, similarity }) => ({ entry, odds: odds.get(entry) ?? 0, similarity: similarity ?? 0 }))
    .sort((a, b) => b.odds - a.odds || b.similarity - a.similarity || (a.entry < b.entry ? -1 : 1))
    .map(({ entry }) => entry);
  return { labels, first: of.get(labels[0] ?? "") ?? 0, none };
}

/**
 * The calibration beside the network; null when there is none, or it is another model's.
 * @throws Error naming the field, the rule and the value received
 */
export async function calibrationOf(model: string): Promise<Calibration | null> {
  const json = await readCalibration();
  if (json === null) return null;
  const parsed = parseCalibration(json);
  if (parsed.ok) return parsed.value.model === model ? parsed.value : null;
  const { field, rule, received } = parsed.error;
  throw new Error(`calibration.json: ${field} must be ${rule}. Received ${received}.`);
}
