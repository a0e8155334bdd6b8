/** How sure an answer is, in words, from the surest; what is less is shown for comparison, and nothing is claimed. */
export const SURENESSES = ["very likely", "likely", "possible"] as const;
export type Sureness = (typeof SURENESSES)[number];

/**
 * The probability from which each word is used; common practice would name no numbers, so each has its reason.
 */
export const SURE_FROM: Readonly<Record<Sureness, number>> = {
  /** Wrong once in ten at most: enough to go on with, not enough to stop comparing. */
  "very likely": 0.9,
  /** Clearly more often right than wrong, and, since all sum to 1, never said of two entries at once. */
  likely: 0.6,
  /** About one in seven: worth an eye's comparison; under it, the long tail of every answer would be claimed. */
  possible: 0.15,
};

/** @returns null when nothing is claimed */
export function surenessOf(probability: number): Sureness | null {
  return SURENESSES.find((word) => probability >= SURE_FROM[word]) ?? null;
}

/** "None of these fits" is the answer when nothing is likelier. */
export function noneIsLikeliest(none: number, probabilities: Iterable<number>): boolean {
  for (const each of probabilities) if (each > none) return false;
  return true;
}

/**
 * A probability as it is shown: whole per cent, from 1 to 99, since neither never nor always can be known from a
 * thousand photographs.
 */
export function percentOf(probability: number): number {
  return Math.min(99, Math.max(1, Math.round(100 * probability)));
}
