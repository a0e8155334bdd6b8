/**
 * What each agreement and each contradiction weighs, in natural units of log-odds: added to the log-odds of the
 * photograph. Chosen, not fitted, by the reasoning beside each: no collection of look-ups with known letters, sizes and
 * makings exists to fit them on.
 *
 * Two rules keep the photograph in its right. Agreements of technique, material and kind are small, since many marks
 * share them. What speaks against an entry never weighs more than `mostAgainst`: the model's "very close" stands
 * at log-odds 3.5 (0.97), so even then it stays above evens.
 */
export const EVIDENCE = {
  /**
   * A photograph never speaks against an entry by more than four letters speak for it. The model's figures tell how
   * far right and wrong answers part near its thresholds, not how seldom a bad photograph falls far below them.
   */
  leastOfPhotograph: -4,
  /**
   * Where an entry without a photograph stands against "none of them" when its letters agree: four letters make it
   * likely (0.88), never very likely, since nobody has seen that it is alike.
   */
  withoutPhotograph: -2,
  letters: {
    /**
     * Two letters of English agree by chance once in fifteen times (index of coincidence 0.067: from memory, W. F.
     * Friedman, "The Index of Coincidence and its Applications in Cryptography", 1922), so each is worth up to 2.7.
     * Counted as 1, because initials repeat within a trade, and up to 4, because marks of one maker share their words.
     */
    aLetter: 1,
    whole: 4,
    /** A part may lie anywhere in the wording, which gives chance more places: the first letter counts for nothing. */
    part: 3,
    /** One letter in four read otherwise: a slip as likely as another mark with nearly the same name. */
    near: 1,
    /** Half a unit for each letter read, up to this: worn letters are misread, and a mark may be transcribed in part. */
    not: -2,
  },
  /** Sizes are spread widely, and measured well enough by anyone with a ruler; marks were also cut in several sizes. */
  size: { for: 1, against: -1.5 },
  /** A third of the marks of a trade share one (80 of 227 in the demo are stamped), and it is easily mistaken. */
  technique: { for: 0.5, against: -1 },
  /** Seldom mistaken, but one mark was used on more than one material, and an entry records one. */
  material: { for: 0.5, against: -1.5 },
  /** Nearly always known; nearly everything is a mark. */
  kind: { for: 0.25, against: -1.5 },
  mostAgainst: -3,
} as const;
