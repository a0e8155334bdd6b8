import { appendFile, writeFile } from "node:fs/promises";
import { weigh } from "./chances.ts";
import { comparePairs, type Judge, type Seen } from "./pairs.ts";
import type { Known } from "./rank.ts";

/** A query, how similar it is to every photograph of the reference, and what judges the details of the nearest. */
export type Compared = {
  readonly query: string;
  /** Its class; null when no reference shows it. */
  readonly label: string | null;
  readonly seen: Seen;
  readonly judge: Judge | null;
};

/**
 * What probabilities are fitted on, as JSON lines. The first names the model; then one a query: how many photographs
 * of how many classes were searched, whether one of them shows its mark, the place of its class among the candidates, and the candidates
 * that a look-up weighs, each as cosine, photographs of the class, pair score.
 *
 * With sizes, each query is asked for each of them against a reference drawn from all classes at random, of so many
 * classes; half of the time its own is left out, so that half of all marks asked for are in no entry.
 */
export function featureFile(path: string, known: readonly Known[], sizes: readonly number[], seed = 1) {
  const random = mulberry(seed);
  const labels = [...new Set(known.map(({ label }) => label))];
  return {
    /** Begins anew, whatever stands in the file. */
    begin: (model: string) => writeFile(path, `${JSON.stringify({ model, photographs: known.length })}\n`),
    async write(compared: Compared): Promise<void> {
      const lines: string[] = [];
      if (sizes.length === 0) lines.push(await lineOf(compared, known));
      for (const size of sizes) {
        const own = random() < 0.5 ? compared.label : null;
        const others = labels.filter((label) => label !== compared.label);
        const drawn = new Set(draw(others, own === null ? size : size - 1, random));
        if (own !== null) drawn.add(own);
        lines.push(await lineOf(...among(compared, known, drawn)));
      }
      await appendFile(path, `${lines.join("\n")}\n`);
    },
  };
}

/** The same query against the photographs of some classes. */
function among(
  compared: Compared,
  known: readonly Known[],
  labels: ReadonlySet<string>,
): [Compared, readonly Known[]] {
  const places = [...known.keys()].filter((i) => labels.has(known[i]?.label ?? ""));
  const similarities = compared.seen.similarities.map((turned) =>
    Float64Array.from(places, (i) => turned[i] ?? Number.NaN),
  );
  return [{ ...compared, seen: { ...compared.seen, similarities } }, places.flatMap((i) => known[i] ?? [])];
}

async function lineOf({ query, label, seen, judge }: Compared, known: readonly Known[]): Promise<string> {
  const pairScores = judge ? await comparePairs([seen], known, judge) : undefined;
  const weighed = weigh([seen.similarities], known, pairScores);
  const place = weighed.findIndex(({ entry }) => entry === label);
  return JSON.stringify({
    query,
    photographs: known.length,
    entries: new Set(known.map((each) => each.label)).size,
    present: known.some((each) => each.label === label),
    right: place < 0 ? null : place,
    candidates: weighed.map(({ similarity, photographs, pairScore }) => [
      Number(similarity?.toFixed(5)),
      photographs,
      pairScore === null ? null : Number(pairScore.toFixed(4)),
    ]),
  });
}

/** So many of a list, by the first steps of a Fisher-Yates shuffle. */
function draw(from: readonly string[], count: number, random: () => number): readonly string[] {
  const rest = [...from];
  return Array.from({ length: Math.min(count, rest.length) }, () => {
    const [taken = ""] = rest.splice(Math.floor(random() * rest.length), 1);
    return taken;
  });
}

/** Numbers from 0 to 1 from a seed: Tommy Ettinger's Mulberry32, in the public domain. */
function mulberry(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
