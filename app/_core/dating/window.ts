import { widened } from "../dates/circa-policy.ts";
import type { Interval } from "../dates/interval.ts";
import { MONTHS, monthOf } from "./day.ts";
import type { EventModel } from "./event-model.ts";
import type { Evidence } from "./evidence.ts";

/** When the event was, on the grid of months: the end is the first month after it. Null where it is open. */
export type EventWindow = {
  readonly from: number | null;
  readonly to: number | null;
  /** How far each end may be out, in months. */
  readonly softBelow: number;
  readonly softAbove: number;
};

/** The periods any one of which a piece may mean; nearly always one. */
export function periodsOf({ interval, alternatives }: Evidence): readonly Interval[] {
  return [interval, ...(alternatives ?? [])];
}

/**
 * When the event of a piece was. Days are rounded out to their months; "about" and what the model says of the stated
 * ends soften them.
 */
export function eventWindow(period: Interval, model: EventModel): EventWindow {
  const meant = model.bounds.upper === "start" ? beginningOf(period) : period;
  const soft = widened(meant);
  const from = meant.firstDay === null ? null : monthOf(meant.firstDay);
  const to = meant.lastDay === null ? null : monthOf(meant.lastDay) + 1;
  const about = (end: number | null, edge: number | null) =>
    end === null || edge === null ? 0 : MONTHS * Math.abs(end - edge);
  return {
    from,
    to,
    softBelow: Math.round(about(soft.from, soft.softFrom) + MONTHS * model.soft.lower),
    softAbove: Math.round(about(soft.to, soft.softTo) + MONTHS * model.soft.upper),
  };
}

/** When a state that lasted began: `1930/1950` began in 1930. What has no known beginning is as it is. */
export function beginningOf(period: Interval): Interval {
  const { start } = period;
  if (start.days === null) return period;
  return { ...period, firstDay: start.days.first, lastDay: start.days.last, end: start };
}
