import type { EventModel } from "./event-model.ts";
import { addLags, lagTable } from "./lag.ts";
import { type Steps, stepAfter, stepOf } from "./steps.ts";
import type { EventWindow } from "./window.ts";

/**
 * How likely it is that the event fell into its window, for each step in which the object may have been made:
 *
 *     before   made = event + lag     P(lag <= made - from) - P(lag <= made - to)
 *     at       made = event           the same with no lag
 *     after    event = made + lag     P(lag <= to - made) - P(lag <= from - made)
 *
 * each end averaged over what it may be out by.
 */
export function likelihood(
  { perYear, first, count }: Steps,
  window: EventWindow,
  model: EventModel,
): Float64Array {
  const table = lagTable(model, perYear);
  const softBelow = stepAfter(window.softBelow, perYear);
  const softAbove = stepAfter(window.softAbove, perYear);
  const from = window.from === null ? null : stepOf(window.from, perYear);
  const to = window.to === null ? null : stepAfter(window.to, perYear);
  const below = (sign: 1 | -1, start: number) => ({ sign, start, soft: softBelow });
  const above = (sign: 1 | -1, start: number) => ({ sign, start, soft: softAbove });
  const likely = new Float64Array(count);
  if (model.side === "after") {
    if (to === null) likely.fill(1);
    else addLags(likely, table, { ...above(1, to + softAbove - first - 1), direction: -1 });
    if (from !== null) addLags(likely, table, { ...below(-1, from - first - 1), direction: -1 });
  } else {
    if (from === null) likely.fill(1);
    else addLags(likely, table, { ...below(1, first - from + softBelow), direction: 1 });
    if (to !== null) addLags(likely, table, { ...above(-1, first - to), direction: 1 });
  }
  for (let k = 0; k < count; k++) if ((likely[k] ?? 0) < NONE) likely[k] = 0;
  return likely;
}

/** What is left over where two equal likelihoods are taken from each other. */
const NONE = 1e-12;
