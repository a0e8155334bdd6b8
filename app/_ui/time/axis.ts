import type { Interval } from "#core/dates/interval";

/** The years a page's charts share, left to right. */
export type Axis = { readonly from: number; readonly to: number; readonly ticks: readonly number[] };

/** Years by which an axis goes on beyond what is known, so that an open end has room. */
const MARGIN = 5;
const STEPS = [5, 10, 20, 25, 50, 100, 200, 500];

/** The axis that holds every known year of the periods; null when no period has one. */
export function axisOver(periods: readonly (Interval | null)[], wantedTicks = 7): Axis | null {
  const years = periods
    .flatMap((period) => (period ? [period.earliest, period.latest] : []))
    .filter((year) => year !== null);
  return years.length === 0 ? null : axisFrom(Math.min(...years), Math.max(...years), wantedTicks);
}

/** The axis from one year to another, with a little room on either side. */
export function axisFrom(earliest: number, latest: number, wantedTicks = 7): Axis {
  const first = earliest - MARGIN;
  const last = latest + MARGIN;
  const step = STEPS.find((each) => (last - first) / each <= wantedTicks) ?? 1000;
  const from = Math.floor(first / step) * step;
  const to = Math.ceil(last / step) * step;
  const ticks = Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
  return { from, to, ticks };
}

/** Where a year lies on the axis, in percent from its left. */
export function at(year: number, { from, to }: Axis): number {
  return Math.round((10000 * (Math.min(to, Math.max(from, year)) - from)) / (to - from)) / 100;
}
