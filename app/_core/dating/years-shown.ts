import type { Estimate } from "./estimate.ts";
import type { Evidence } from "./evidence.ts";
import type { Grid } from "./steps.ts";
import { periodsOf } from "./window.ts";

/** What is less likely than this on either side need not be drawn. */
const TAIL = 0.001;

/** The years a chart must show: all but the tails of what is likely, and every stated end that lies near it. */
export function yearsShown({ grid, posterior }: Estimate, evidence: readonly Evidence[]): Grid {
  const ends = evidence
    .flatMap(periodsOf)
    .flatMap(({ earliest, latest }) => [earliest, latest])
    .filter((year) => year !== null && grid.from <= year && year <= grid.to)
    .filter((year) => year !== null);
  return {
    from: Math.min(grid.from + tail(posterior), ...ends),
    to: Math.max(grid.to - tail(posterior.toReversed()), ...ends),
  };
}

function tail(years: readonly number[]): number {
  let sum = 0;
  const first = years.findIndex((p) => {
    sum += p;
    return sum > TAIL;
  });
  return Math.max(0, first);
}

/** How likely spans of equally many years are, the first and the last with something in them and all between. */
export function byDecades(
  { grid, posterior }: Estimate,
  shown: Grid,
  most = 24,
): readonly { readonly from: number; readonly to: number; readonly mass: number }[] {
  const step =
    [1, 2, 5, 10, 20, 25, 50, 100, 200].find((each) => (shown.to - shown.from + 1) / each < most - 1) ?? 500;
  const first = Math.floor(shown.from / step) * step;
  const count = Math.floor((shown.to - first) / step) + 1;
  return Array.from({ length: count }, (_, i) => {
    const from = first + i * step;
    const years = posterior.slice(Math.max(0, from - grid.from), Math.max(0, from + step - grid.from));
    return { from, to: from + step - 1, mass: years.reduce((sum, p) => sum + p, 0) };
  });
}
