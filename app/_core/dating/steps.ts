import { MONTHS } from "./day.ts";

/** The years that are computed with, first and last counted in. */
export type Grid = { readonly from: number; readonly to: number };

/** The grid cut into steps: months, or quarters of a year where it is long. */
export type Steps = {
  readonly perYear: 12 | 4;
  /** Steps from the beginning of year 0 to the first. */
  readonly first: number;
  readonly count: number;
};

/** Up to so many years are computed with by months. */
const YEARS_BY_MONTHS = 200;

export function stepsOf({ from, to }: Grid): Steps {
  const years = to - from + 1;
  const perYear = years <= YEARS_BY_MONTHS ? 12 : 4;
  return { perYear, first: perYear * from, count: perYear * years };
}

/** The step a month lies in. */
export function stepOf(month: number, perYear: number): number {
  return Math.floor((month * perYear) / MONTHS);
}

/** The first step that begins no earlier than a month does. */
export function stepAfter(month: number, perYear: number): number {
  return Math.ceil((month * perYear) / MONTHS);
}

export function byYear(steps: Float64Array, perYear: number): Float64Array {
  const years = new Float64Array(steps.length / perYear);
  for (let y = 0, k = 0; y < years.length; y++) {
    let sum = 0;
    for (const end = k + perYear; k < end; k++) sum += steps[k] ?? 0;
    years[y] = sum;
  }
  return years;
}
