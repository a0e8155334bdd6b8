import type { Bound, Interval } from "./interval.ts";

/** How far "about" reaches to either side, in years: policy, shown beside every date that uses it. */
export type CircaPolicy = { readonly year: number; readonly decade: number };

export const CIRCA_POLICY: CircaPolicy = { year: 5, decade: 10 };

/** A period with its soft edges, in fractional years; a year y is [y, y + 1). Null where it is open or unknown. */
export type Widened = {
  readonly from: number | null;
  readonly to: number | null;
  readonly softFrom: number | null;
  readonly softTo: number | null;
};

/** What a period spans when "about" is allowed for. */
export function widened(interval: Interval, policy: CircaPolicy = CIRCA_POLICY): Widened {
  const { earliest, latest, start, end } = interval;
  const reach = (bound: Bound) => {
    if (!bound.approximate && !bound.uncertain) return 0;
    return /\dX/.test(interval.edtf) ? policy.decade : policy.year;
  };
  const to = latest === null ? null : latest + 1;
  return {
    from: earliest,
    to,
    softFrom: earliest === null ? null : earliest - reach(start),
    softTo: to === null ? null : to + reach(end),
  };
}
