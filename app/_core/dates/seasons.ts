/** Months from a year's January: 13 is the January after. */
type Months = { readonly first: number; readonly last: number };

const WINTER: Months = { first: 12, last: 14 };
const SPRING: Months = { first: 3, last: 5 };
const SUMMER: Months = { first: 6, last: 8 };
const AUTUMN: Months = { first: 9, last: 11 };
const part = (which: number, length: number): Months => ({
  first: (which - 1) * length + 1,
  last: which * length,
});

/**
 * The divisions of a year that EDTF writes in the month's place (level 1: 21 to 24, level 2: 25 to 41).
 * The specification gives the names of the seasons and no months. Declared here: three whole months each, of the
 * northern hemisphere where none is named; winter is the one that begins in that year's December.
 */
export const SEASONS: Readonly<Record<number, Months>> = {
  21: SPRING,
  22: SUMMER,
  23: AUTUMN,
  24: WINTER,
  25: SPRING,
  26: SUMMER,
  27: AUTUMN,
  28: WINTER,
  29: AUTUMN,
  30: WINTER,
  31: SPRING,
  32: SUMMER,
  33: part(1, 3),
  34: part(2, 3),
  35: part(3, 3),
  36: part(4, 3),
  37: part(1, 4),
  38: part(2, 4),
  39: part(3, 4),
  40: part(1, 6),
  41: part(2, 6),
};
