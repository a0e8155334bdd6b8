import { CIRCA, type CircaPolicy } from "./circa-policy.ts";
import { dayAfter, dayOf, inYears } from "./day.ts";
import { type End, endsOf, isDate, readEdtf } from "./edtf.ts";
import type { Interval } from "./interval.ts";

/** A period in years with fractions, year y reaching from y to y + 1; null where an end is open or unknown. */
export type Widened = {
  readonly from: number | null;
  readonly to: number | null;
  /** As far as "about" and "perhaps" reach: the firm edge where a date bears neither. */
  readonly softFrom: number | null;
  readonly softTo: number | null;
};

/** The edges of a period, and the soft ones that "about" and "perhaps" give them. */
export function widened(interval: Interval, policy: CircaPolicy = CIRCA): Widened {
  const from = interval.firstDay === null ? null : inYears(dayOf(interval.firstDay));
  const to = interval.lastDay === null ? null : inYears(dayAfter(dayOf(interval.lastDay)));
  const read = readEdtf(interval.edtf);
  const [start, end]: readonly [End, End] = read.ok ? endsOf(read.value) : ["unknown", "unknown"];
  return {
    from,
    to,
    softFrom: from === null ? null : from - spread(start, policy),
    softTo: to === null ? null : to + spread(end, policy),
  };
}

function spread(end: End, policy: CircaPolicy): number {
  if (!isDate(end)) return 0;
  const { about, perhaps } = end;
  return (about ? policy.about[about] : 0) + (perhaps ? policy.perhaps[perhaps] : 0);
}
