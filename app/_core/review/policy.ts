/** The rules of a review, as data; a review goes by those that stood when it began. */
export type ReviewPolicy = {
  /** Fewest votes that must count. */
  readonly votes: number;
  /** Least share of support among counted votes that do not abstain, as a fraction. */
  readonly support: { readonly of: number; readonly outOf: number };
  /** Hours a review is open at least. */
  readonly hours: number;
  /** Days after which a review that was not decided is not accepted. */
  readonly days: number;
  /**
   * From when those days count, where it is not from the submission: what an operator imports was put forward by
   * nobody who could ask others to look, and must not fall through before anybody has.
   */
  readonly daysFrom?: "first vote";
  /** Fewest characters of a vote's reason. */
  readonly reason: number;
};

export const DEFAULT_POLICY: ReviewPolicy = {
  votes: 3,
  support: { of: 2, outOf: 3 },
  hours: 72,
  days: 30,
  reason: 20,
};
