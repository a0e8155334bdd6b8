/** A place in a photograph, in its pixels. */
export type Place = readonly [x: number, y: number];

/** Two photographs of one mark laid over each other, or the finding that they can't be. */
export type Alignment = {
  /** How many points agree. */
  readonly inliers: number;
  /** The points that agree, on both photographs. */
  readonly points: readonly { readonly query: Place; readonly reference: Place }[];
  /** Nine numbers, row by row, that take a place in the query to one in the reference; null when none was found. */
  readonly homography: readonly number[] | null;
  /** Whether two photographs of one flat mark could lie so, and enough points agree. */
  readonly plausible: boolean;
};
