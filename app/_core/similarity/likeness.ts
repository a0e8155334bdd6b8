/** Likeness in words, from the nearest to the farthest. Not yet a probability: see the model's card. */
export const LIKENESSES = ["very close", "close", "some", "little"] as const;
export type Likeness = (typeof LIKENESSES)[number];

/** Similarities (cosine) at which the words change, read off the model's held-out designs; see ml/model/CARD.md. */
export type LikenessThresholds = {
  readonly veryClose: number;
  readonly close: number;
  readonly some: number;
  /** Under this best similarity "none of these" is the likelier answer. */
  readonly noneBelow: number;
};

export function likenessOf(similarity: number, at: LikenessThresholds): Likeness {
  if (similarity >= at.veryClose) return "very close";
  if (similarity >= at.close) return "close";
  if (similarity >= at.some) return "some";
  return "little";
}
