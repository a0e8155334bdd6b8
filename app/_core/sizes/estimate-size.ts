import { ALLOWANCES, CATALOGUE, type Making } from "./allowances.ts";
import {
  type CataloguedLine,
  type CataloguedSize,
  CONVENTIONS,
  type Convention,
  type Measurement,
} from "./line.ts";

/** How likely each size is if the catalogue measured this way. */
export type UnderConvention = {
  readonly convention: Convention;
  readonly sizes: readonly { readonly size: CataloguedSize; readonly probability: number }[];
  /** That it is a size nobody catalogued. */
  readonly none: number;
  /** The likeliest of the sizes; null when none of them is likelier than none. */
  readonly best: CataloguedSize | null;
};

/** What would settle which size it is. */
export type Step =
  | { readonly step: "measure"; readonly convention: Convention }
  | { readonly step: "find-convention"; readonly between: readonly Convention[] }
  | { readonly step: "measure-known-example"; readonly between: readonly Convention[] };

export type SizeEstimate = {
  readonly under: readonly UnderConvention[];
  /** Whether it matters what the catalogue measured. */
  readonly verdict: "nothing-to-compare" | "one-way" | "conventions-agree" | "conventions-disagree";
  readonly toSettle: readonly Step[];
};

/**
 * Which of a line's sizes an object has, for each way in which the catalogue may have measured. A measure speaks only
 * of sizes that were taken the same way: 22 cm long says nothing of a size that is a height.
 */
export function estimateSize(
  line: CataloguedLine,
  measurements: readonly Measurement[],
  making: Making,
): SizeEstimate {
  const ways = CONVENTIONS.filter((each) => line.convention === null || each === line.convention);
  const under = ways.flatMap((convention) => {
    const taken = measurements.filter((each) => each.convention === convention);
    return taken.length === 0 || line.sizes.length === 0
      ? []
      : [weigh(convention, line.sizes, taken, making)];
  });
  const verdict = verdictOf(under);
  return { under, verdict, toSettle: stepsFor(verdict, line, under) };
}

function verdictOf(under: readonly UnderConvention[]): SizeEstimate["verdict"] {
  if (under.length === 0) return "nothing-to-compare";
  if (under.length === 1) return "one-way";
  const best = new Set(under.map((each) => each.best?.millimetres ?? null));
  return best.size === 1 ? "conventions-agree" : "conventions-disagree";
}

function stepsFor(
  verdict: SizeEstimate["verdict"],
  { convention, sizes }: CataloguedLine,
  under: readonly UnderConvention[],
): readonly Step[] {
  if (sizes.length === 0) return [];
  if (verdict === "nothing-to-compare" && convention !== null) return [{ step: "measure", convention }];
  if (verdict !== "conventions-disagree") return [];
  const between = under.map((each) => each.convention);
  return [
    { step: "find-convention", between },
    { step: "measure-known-example", between },
  ];
}

function weigh(
  convention: Convention,
  sizes: readonly CataloguedSize[],
  taken: readonly Measurement[],
  making: Making,
): UnderConvention {
  const share = (1 - CATALOGUE.uncataloguedShare) / sizes.length;
  const logs = sizes.map(
    (size) => Math.log(share) + sum(taken.map((each) => logDensity(each, size, making))),
  );
  const none = Math.log(CATALOGUE.uncataloguedShare) + sum(taken.map(() => -Math.log(reach(sizes))));
  const top = Math.max(none, ...logs);
  const total = sum([...logs, none].map((each) => Math.exp(each - top)));
  const chance = (log: number) => Math.exp(log - top) / total;
  const weighed = sizes.map((size, i) => ({
    size,
    probability: chance(logs[i] ?? Number.NEGATIVE_INFINITY),
  }));
  const best = weighed.reduce((a, b) => (b.probability > a.probability ? b : a), {
    size: null,
    probability: chance(none),
  } as {
    size: CataloguedSize | null;
    probability: number;
  });
  return { convention, sizes: weighed, none: chance(none), best: best.size };
}

/** A size nobody catalogued may be anything from half the smallest to half as much again as the largest. */
function reach(sizes: readonly CataloguedSize[]): number {
  const all = sizes.map((each) => each.millimetres);
  return 1.5 * Math.max(...all) - 0.5 * Math.min(...all);
}

/** Normal about the size as it is today: the measure, the object's scatter and the catalogue's rounding add up. */
function logDensity({ millimetres, within }: Measurement, size: CataloguedSize, making: Making): number {
  const { smaller, varies } = ALLOWANCES[making];
  const rounding = CATALOGUE.roundedToMm / Math.sqrt(12);
  // "Within" is read as two standard deviations: 19 of 20 measures are no further off.
  const spread = Math.hypot(within / 2, varies * size.millimetres, rounding);
  const z = (millimetres - size.millimetres * (1 - smaller)) / spread;
  return -0.5 * z * z - Math.log(spread * Math.sqrt(2 * Math.PI));
}

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0);
