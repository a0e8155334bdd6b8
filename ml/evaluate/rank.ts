import { combineSimilarities } from "../../app/_core/similarity/combine.ts";
import { type Hit, NEIGHBOURS } from "../../app/_core/similarity/rank.ts";
import type { Described } from "../embed.ts";

/** A photograph of the reference: the class it belongs to, and what the method makes of it. */
export type Known = { readonly label: string; readonly described: Described };

/** A class and how similar the best of its photographs is in the query's best direction. */
export type RankedClass = { readonly label: string; readonly similarity: number };

/** For each direction of the query, its similarity to every photograph of the reference. */
export function compare(query: readonly Described[], references: readonly Known[]): readonly Float64Array[] {
  return query.map((turned) =>
    Float64Array.from(references, ({ described }) => dot(turned.vector, described.vector)),
  );
}

/** Classes by similarity, best first; ties are broken by the name of the class. */
export function rank(similarities: readonly Float64Array[], references: readonly Known[]): RankedClass[] {
  const best = new Map<string, number>();
  for (const [i, { label }] of references.entries()) {
    let similarity = best.get(label) ?? Number.NEGATIVE_INFINITY;
    for (const turned of similarities) similarity = Math.max(similarity, turned[i] ?? similarity);
    best.set(label, similarity);
  }
  return [...best].map(([label, similarity]) => ({ label, similarity })).sort(byOrder);
}

const byOrder = (a: RankedClass, b: RankedClass): number =>
  b.similarity - a.similarity || (a.label < b.label ? -1 : 1);

/** One ranking of what several photographs of a mark say, each as `compare` gives it. */
export function rankTogether(
  photographs: readonly (readonly Float64Array[])[],
  references: readonly Known[],
): RankedClass[] {
  const classes = new Map<string, number[]>();
  for (const similarities of photographs)
    for (const { label, similarity } of rank(similarities, references))
      classes.set(label, [...(classes.get(label) ?? []), similarity]);
  return [...classes]
    .map(([label, similarities]) => ({ label, similarity: combineSimilarities(similarities) }))
    .sort(byOrder);
}

/** The nearest photographs as a look-up finds them: so many for each direction. */
export function nearest(similarities: readonly Float64Array[], references: readonly Known[]): Hit[] {
  return similarities.flatMap((turned, turn) => {
    const limit = turned.slice().sort()[Math.max(0, turned.length - NEIGHBOURS)] ?? 0;
    return references.flatMap(({ label }, i) => {
      const similarity = turned[i] ?? Number.NEGATIVE_INFINITY;
      return similarity >= limit ? [{ photographId: String(i), entry: label, similarity, turn }] : [];
    });
  });
}

function dot(a: Float32Array, b: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}
