import { CIRCA_POLICY, widened } from "../dates/circa-policy.ts";
import type { Interval } from "../dates/interval.ts";
import { dayOrder, firstDayOfMonth, lastDayOfMonth, MONTHS } from "./day.ts";
import { modelOf } from "./event-model.ts";
import type { Evidence } from "./evidence.ts";
import { beginningOf, periodsOf } from "./window.ts";

/** Days in which the object was made if a piece is taken at its word; null where it sets no bound. */
export type HardWindow = { readonly first: string | null; readonly last: string | null };

/** What a piece says at its word: one window, or several when it may mean several periods. */
export function hardReading(piece: Evidence): readonly HardWindow[] {
  const { bounds } = modelOf(piece);
  return periodsOf(piece).map((period) => ({
    first: bounds.lower ? firstDay(period) : null,
    last: bounds.upper === null ? null : lastDay(bounds.upper === "start" ? beginningOf(period) : period),
  }));
}

/** "About" allows what the policy says it spans, in whole months. */
function firstDay(period: Interval): string | null {
  if (!period.start.approximate && !period.start.uncertain) return period.firstDay;
  const { softFrom } = widened(period, CIRCA_POLICY);
  return softFrom === null ? period.firstDay : firstDayOfMonth(Math.floor(MONTHS * softFrom + ROUNDING));
}

function lastDay(period: Interval): string | null {
  if (!period.end.approximate && !period.end.uncertain) return period.lastDay;
  const { softTo } = widened(period, CIRCA_POLICY);
  return softTo === null ? period.lastDay : lastDayOfMonth(Math.ceil(MONTHS * softTo - ROUNDING) - 1);
}

/** A day in a year is a fraction with many digits: months that differ by less are the same. */
const ROUNDING = 0.01;

/** Bounds in numbers that can be compared. */
export type Span = { readonly from: number; readonly to: number };

export function spanOf({ first, last }: HardWindow): Span {
  return {
    from: first === null ? Number.NEGATIVE_INFINITY : dayOrder(first),
    to: last === null ? Number.POSITIVE_INFINITY : dayOrder(last),
  };
}
