import type { EventModel } from "./event-model.ts";
import { lagTable, lagUpTo } from "./lag.ts";
import type { EventWindow } from "./window.ts";

/**
 * How likely it is that the event fell into its window, for each month in which the object may have been made:
 *
 *     before   made = event + lag     P(lag <= made - from) - P(lag <= made - to)
 *     at       made = event           the same with no lag
 *     after    event = made + lag     P(lag <= to - made) - P(lag <= from - made)
 *
 * each end averaged over what it may be out by.
 * @param first the month the array begins with
 */
export function addLikelihood(
  into: Float64Array,
  first: number,
  { from, to, softBelow, softAbove }: EventWindow,
  model: EventModel,
): void {
  const table = lagTable(model);
  const after = model.side === "after";
  // Of the end that must be passed and the one that must not, after the making the later comes first.
  const [sure, softSure, too, softToo] = after
    ? [to, softAbove, from, softBelow]
    : [from, softBelow, to, softAbove];
  for (let k = 0; k < into.length; k++) {
    const month = first + k;
    const passed =
      sure === null
        ? 1
        : lagUpTo(table, after ? sure + softSure - month - 1 : month - sure + softSure, softSure);
    const beyond = too === null ? 0 : lagUpTo(table, after ? too - month - 1 : month - too, softToo);
    into[k] = Math.min(1, (into[k] ?? 0) + Math.max(0, passed - beyond));
  }
}
