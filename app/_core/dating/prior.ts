import { MONTHS } from "./day.ts";
import { modelOf } from "./event-model.ts";
import type { Evidence } from "./evidence.ts";
import { type Grid, type Steps, stepsOf } from "./steps.ts";
import { type EventWindow, eventWindow, periodsOf } from "./window.ts";

/** What is held before any piece of evidence is looked at. */
export type Prior =
  /** Nothing but what the evidence spans: any year of the widest window as likely as any other. */
  | { readonly kind: "widest"; readonly thisYear: number }
  /** Any year from one to another, both counted in, as likely as any other; none outside. */
  | { readonly kind: "years"; readonly from: number; readonly to: number }
  /** A maker's years of activity, which hold with so much probability; else as `widest`. */
  | {
      readonly kind: "maker";
      readonly from: number;
      readonly to: number;
      readonly reliability: number;
      readonly thisYear: number;
    };

export type DatingPolicy = {
  /** Years by which the widest window goes on beyond stated ends, for soft edges and lags. */
  readonly margin: number;
  /** Years it reaches back from the first year that is stated, when nothing says not before. */
  readonly openReach: number;
  /** No grid is longer, in years. */
  readonly longest: number;
};
export const DATING_POLICY: DatingPolicy = { margin: 10, openReach: 100, longest: 2000 };

/** @returns the years, how they are cut, and how likely each step is beforehand (sums to 1) */
export function spreadPrior(
  evidence: readonly Evidence[],
  prior: Prior,
  policy: DatingPolicy = DATING_POLICY,
): { readonly grid: Grid; readonly steps: Steps; readonly before: Float64Array } {
  if (prior.kind === "years") {
    const grid = { from: prior.from, to: Math.min(prior.to, prior.from + policy.longest - 1) };
    return { grid, steps: stepsOf(grid), before: uniform(stepsOf(grid)) };
  }
  const own = prior.kind === "maker" ? [{ from: MONTHS * prior.from, to: MONTHS * (prior.to + 1) }] : [];
  const grid = widest([...windowsOf(evidence), ...own], prior.thisYear, policy);
  const steps = stepsOf(grid);
  const before = uniform(steps);
  if (prior.kind === "maker") weighIn(before, steps, prior);
  return { grid, steps, before };
}

function uniform({ count }: Steps): Float64Array {
  return new Float64Array(count).fill(1 / count);
}

/** The years of the maker hold so much of it, all years the rest. */
function weighIn(before: Float64Array, steps: Steps, maker: Prior & { readonly kind: "maker" }): void {
  const first = Math.max(0, steps.perYear * maker.from - steps.first);
  const last = Math.min(before.length, steps.perYear * (maker.to + 1) - steps.first);
  if (last <= first) return;
  for (let k = 0; k < before.length; k++) before[k] = (before[k] ?? 0) * (1 - maker.reliability);
  for (let k = first; k < last; k++) before[k] = (before[k] ?? 0) + maker.reliability / (last - first);
}

type Ends = Pick<EventWindow, "from" | "to">;

function windowsOf(evidence: readonly Evidence[]): readonly Ends[] {
  return evidence
    .filter((piece) => piece.reliability > 0)
    .flatMap((piece) => {
      const model = modelOf(piece);
      if (model.side === "apart") return [];
      return periodsOf(piece).map((period) => {
        const { from, to } = eventWindow(period, model);
        // What came after the making says nothing of how long before it was; what is only bounded from below, as little.
        return { from: model.side === "after" ? null : from, to };
      });
    });
}

/** From the earliest stated beginning to the latest stated end; an open end reaches as far as the policy says. */
function widest(windows: readonly Ends[], thisYear: number, policy: DatingPolicy): Grid {
  const years = (ends: readonly (number | null)[], shift: number) =>
    ends.filter((month) => month !== null).map((month) => Math.floor((month + shift) / MONTHS));
  const froms = years(
    windows.map(({ from }) => from),
    0,
  );
  const tos = years(
    windows.map(({ to }) => to),
    -1,
  );
  const openAbove = windows.length === 0 || windows.some(({ to }) => to === null) || tos.length === 0;
  const last = openAbove ? thisYear : Math.min(thisYear, Math.max(...tos) + policy.margin);
  const first =
    froms.length > 0 ? Math.min(...froms) - policy.margin : Math.min(last, ...tos) - policy.openReach;
  const to = Math.max(last, first);
  return { from: Math.max(first, to - policy.longest + 1), to };
}
