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
  readonly conflicts: number;
};

/** Dates so many objects of known years, by evidence that the models drew. */
export function coverage(objects: number, seed: number, from = 1800, to = 1949): Coverage {
  const random = seeded(seed);
  const prior: Prior = { kind: "years", from, to };
  const held = { 50: 0, 80: 0, 95: 0 };
  const years = { 50: 0, 80: 0, 95: 0 };
  let conflicts = 0;
  for (let i = 0; i < objects; i++) {
    const { made, evidence } = simulate(random, from, to);
    const found = estimate(evidence, prior);
    if (found.conflicts.length > 0) conflicts++;
    for (const share of SHARES) {
      if (holds(found.shortest[share], made)) held[share]++;
      years[share] += length(found.shortest[share]) / objects;
    }
  }
  return { objects, held, years, conflicts };
}

function holds({ ranges }: Shortest, made: number): boolean {
  return ranges.some(({ begins, ends }) => begins <= made && made < ends);
}

function length({ ranges }: Shortest): number {
  return ranges.reduce((sum, { begins, ends }) => sum + ends - begins, 0);
}
