import { modelOf } from "./event-model.ts";
import type { Evidence } from "./evidence.ts";
import { likelihood } from "./likelihood.ts";
import type { Steps } from "./steps.ts";
import { eventWindow, periodsOf } from "./window.ts";

/** No statement is surer than this: one false piece must not rule. */
const SUREST = 0.999;

/** A piece with how likely its statement is for each step of the grid, were it true. */
export type Weighed = {
  readonly piece: Evidence;
  readonly reliability: number;
  readonly ifTrue: Float64Array;
};

export function weighPiece(piece: Evidence, steps: Steps): Weighed {
  const model = modelOf(piece);
  const ifTrue =
    model.side === "apart"
      ? new Float64Array(steps.count).fill(1)
      : anyOf(periodsOf(piece).map((period) => likelihood(steps, eventWindow(period, model), model)));
  return { piece, reliability: Math.min(SUREST, Math.max(0, piece.reliability)), ifTrue };
}

/** That one of several periods holds: what each of them says added up, and never more than certain. */
function anyOf([first = new Float64Array(), ...others]: readonly Float64Array[]): Float64Array {
  for (const other of others)
    for (let k = 0; k < first.length; k++) first[k] = Math.min(1, (first[k] ?? 0) + (other[k] ?? 0));
  return first;
}

/**
 * What pieces that depend on each other say together, for each step, 1 being nothing.
 *
 * A piece alone is true with its reliability r, else it says nothing (as if it belonged to another object):
 *
 *     r * ifTrue(step) / E(ifTrue) + 1 - r        E over the prior
 *
 * so that a posterior by one piece is r times the posterior were it true plus 1 - r times the prior. Several of one
 * group are false together, the less reliable first: with r1 >= r2, both are true with r2, only the first with
 * r1 - r2, neither with 1 - r1. What they say together is what each allows: the least of them at each step. The
 * same fact stated twice so counts once. What cannot be true together is left out of the sum.
 */
export function mixTogether(group: readonly Weighed[], prior: Float64Array): Float64Array {
  const [only] = group;
  if (only && group.length === 1) return mixAlone(only, prior);
  const sorted = [...group].sort(
    (a, b) => b.reliability - a.reliability || (a.piece.id < b.piece.id ? -1 : 1),
  );
  const mixed = new Float64Array(prior.length);
  const together = new Float64Array(prior.length).fill(1);
  let weights = 1 - (sorted[0]?.reliability ?? 0);
  mixed.fill(weights);
  sorted.forEach(({ reliability, ifTrue }, i) => {
    let mean = 0;
    for (let k = 0; k < prior.length; k++) {
      const least = Math.min(together[k] ?? 0, ifTrue[k] ?? 0);
      together[k] = least;
      mean += (prior[k] ?? 0) * least;
    }
    const weight = reliability - (sorted[i + 1]?.reliability ?? 0);
    if (weight <= 0 || mean <= 0) return;
    weights += weight;
    const scale = weight / mean;
    for (let k = 0; k < prior.length; k++) mixed[k] = (mixed[k] ?? 0) + scale * (together[k] ?? 0);
  });
  if (weights < 1) for (let k = 0; k < prior.length; k++) mixed[k] = (mixed[k] ?? 0) / weights;
  return mixed;
}

function mixAlone({ reliability, ifTrue }: Weighed, prior: Float64Array): Float64Array {
  let mean = 0;
  for (let k = 0; k < prior.length; k++) mean += (prior[k] ?? 0) * (ifTrue[k] ?? 0);
  const mixed = new Float64Array(prior.length);
  if (mean <= 0) return mixed.fill(1);
  const scale = reliability / mean;
  const rest = 1 - reliability;
  for (let k = 0; k < prior.length; k++) mixed[k] = scale * (ifTrue[k] ?? 0) + rest;
  return mixed;
}

/** Pieces by what depends on what: those of one group together, every other by itself, in an order of their own. */
export function byGroup(weighed: readonly Weighed[]): readonly (readonly Weighed[])[] {
  const groups = new Map<string, Weighed[]>();
  const sorted = [...weighed].sort((a, b) => (a.piece.id < b.piece.id ? -1 : 1));
  for (const each of sorted) {
    const key = each.piece.group === null ? `piece ${each.piece.id}` : `group ${each.piece.group}`;
    const group = groups.get(key);
    if (group) group.push(each);
    else groups.set(key, [each]);
  }
  return [...groups.values()];
}
