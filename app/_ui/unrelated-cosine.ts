/** By model, the cosine at which the best reference of a mark without an entry lies. Source: ml/model/CARD.md, Likeness. */
const UNRELATED: Readonly<Record<string, number>> = {
  "marks@1.0.0": 0.83,
  "marks@2.0.0": 0.89,
  "marks@3.0.0": 0.89,
};

/** What the nearest of only unrelated photographs comes to; null for a model of which it was not measured. */
export function unrelatedCosine(model: string): number | null {
  return UNRELATED[model] ?? null;
}
