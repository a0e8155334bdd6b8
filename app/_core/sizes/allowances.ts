/** What an object is made of decides how it may have come to differ from its catalogued size. */
export const MAKINGS = ["stuffed", "fired-clay", "rigid"] as const;
export type Making = (typeof MAKINGS)[number];

export type Allowance = {
  /** Share of the catalogued size by which such an object is smaller today, on the average. */
  readonly smaller: number;
  /** Share by which it varies around that, one standard deviation: making, wear, shrinkage, washing. */
  readonly varies: number;
};

/**
 * All from memory, common practice; no source is claimed, and the page that uses them shows them.
 * Stuffing settles and cloth shrinks; clay shrinks by a tenth or so in drying and firing, which catalogues of finished
 * ware have behind them, so that only its scatter counts; metal, wood and glass stay as they are.
 */
export const ALLOWANCES: Readonly<Record<Making, Allowance>> = {
  stuffed: { smaller: 0.03, varies: 0.05 },
  "fired-clay": { smaller: 0, varies: 0.04 },
  rigid: { smaller: 0, varies: 0.01 },
};

/** A catalogue that gives whole centimetres may be half of one off; and every line has makings of odd size. */
export const CATALOGUE = { roundedToMm: 10, uncataloguedShare: 0.1 } as const;
