import { MONTHS } from "./day.ts";
import type { EventModel } from "./event-model.ts";
import { lagTable, lagUpTo } from "./lag.ts";
import { type Steps, stepAfter, stepOf } from "./steps.ts";
import type { EventWindow } from "./window.ts";

/**
 * How likely it is that the event fell into its window, for each step in which the object may have been made:
 *
 *     before   made = event + lag     P(lag <= made - from) - P(lag <= made - to)
 *     at       made = event           the same with no lag
 *     after    event = made + lag     P(lag <= to - made) - P(lag <= from - made)
 *
 * each end averaged over what it may be out by. It is added to what is there, up to 1.
 */
export function addLikelihood(
  into: Float64Array,
  { perYear, first }: Pick<Steps, "perYear" | "first">,
  window: EventWindow,
  model: EventModel,
): void {
  const table = lagTable(model, perYear);
  const from = window.from === null ? null : stepOf(window.from, perYear);
  const to = window.to === null ? null : stepAfter(window.to, perYear);
  const softBelow = Math.round((window.softBelow * perYear) / MONTHS);
  const softAbove = Math.round((window.softAbove * perYear) / MONTHS);
  if (model.side === "after") {
    for (let k = 0; k < into.length; k++) {
      const step = first + k + 1;
      const passed = to === null ? 1 : lagUpTo(table, to + softAbove - step, softAbove);
      const beyond = from === null ? 0 : lagUpTo(table, from - step, softBelow);
      into[k] = Math.min(1, (into[k] ?? 0) + Math.max(0, passed - beyond));
    }
    return;
  }
  for (let k = 0; k < into.length; k++) {
    const step = first + k;
    const passed = from === null ? 1 : lagUpTo(table, step - from + softBelow, softBelow);
    const beyond = to === null ? 0 : lagUpTo(table, step - to, softAbove);
    into[k] = Math.min(1, (into[k] ?? 0) + Math.max(0, passed - beyond));
  }
}
