import { estimate } from "#core/dating/estimate";
import type { Prior } from "#core/dating/prior";
import type { Shortest } from "#core/dating/shortest";
import { seeded } from "./random.ts";
import { simulate } from "./simulate.ts";

export const SHARES = [50, 80, 95] as const;

export type Coverage = {
  readonly objects: number;
  /** How often the shortest span of a share held the year of making. */
  readonly held: Readonly<Record<(typeof SHARES)[number], number>>;
  /** How many years the span has, on average. */
  readonly years: Readonly<Record<(typeof SHARES)[number], number>>;
  /** Of the same spans in whole years: how much they say they hold, and how often they did. */
  readonly wholeYears: Readonly<
    Record<(typeof SHARES)[number], { readonly say: number; readonly held: number }>
  >;
  readonly conflicts: number;
};

/** Dates so many objects of known years, by evidence that the models drew. */
export function coverage(objects: number, seed: number, from = 1800, to = 1949): Coverage {
  const random = seeded(seed);
  const prior: Prior = { kind: "years", from, to };
  const held = { 50: 0, 80: 0, 95: 0 };
  const years = { 50: 0, 80: 0, 95: 0 };
  const wholeYears = { 50: { say: 0, held: 0 }, 80: { say: 0, held: 0 }, 95: { say: 0, held: 0 } };
  let conflicts = 0;
  for (let i = 0; i < objects; i++) {
    const { made, evidence } = simulate(random, from, to);
    const found = estimate(evidence, prior);
    if (found.conflicts.length > 0) conflicts++;
    for (const share of SHARES) {
      if (holds(found.shortest[share], made)) held[share]++;
      years[share] += length(found.shortest[share]) / objects;
      const { ranges, mass } = found.shortest[share];
      wholeYears[share].say += mass / objects;
      if (ranges.some(({ from, to }) => from <= made && made < to + 1)) wholeYears[share].held++;
    }
  }
  return { objects, held, years, wholeYears, conflicts };
}

function holds({ spans }: Shortest, made: number): boolean {
  return spans.some(({ begins, ends }) => begins <= made && made < ends);
}

function length({ spans }: Shortest): number {
  return spans.reduce((sum, { begins, ends }) => sum + ends - begins, 0);
}
