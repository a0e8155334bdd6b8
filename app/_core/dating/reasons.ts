import type { Estimate } from "./estimate.ts";
import { type ModelId, modelOf } from "./event-model.ts";
import type { Evidence } from "./evidence.ts";

/** How much a piece tells, in a word; the number of bits stands beside it. */
type Strength = "most" | "much" | "some" | "little" | "nothing";

/** Why the estimate is as it is, one sentence a piece: `dating.model.<model>` with its numbers. */
export type Reason = {
  readonly evidenceId: string;
  /** What such a piece says of the making. */
  readonly model: ModelId;
  readonly strength: Strength;
  readonly params: {
    readonly bits: number;
    /** How often such a piece is true, in 100. */
    readonly reliability: number;
    /** Years between which 95 in 100 would lie without it. */
    readonly from: number;
    readonly to: number;
  };
  /** Its own sentence, and where it stands. */
  readonly reason: string;
  readonly source: string;
  /** Pieces that it contradicts, alone or with others. */
  readonly against: readonly string[];
};

/** From so many bits on. Half of what is in question is ruled out by one. */
const FROM_BITS: readonly (readonly [number, Strength])[] = [
  [1.5, "most"],
  [0.5, "much"],
  [0.1, "some"],
  [0.005, "little"],
];

function strengthOf(bits: number): Strength {
  return FROM_BITS.find(([least]) => bits >= least)?.[1] ?? "nothing";
}

/** The pieces in order of what they tell, the most first. */
export function reasonsOf(estimate: Estimate, evidence: readonly Evidence[]): readonly Reason[] {
  return evidence
    .map((piece): Reason => {
      const bits = estimate.weights[piece.id] ?? 0;
      const { from, to } = estimate.without[piece.id]?.interval95 ?? estimate.grid;
      return {
        evidenceId: piece.id,
        model: modelOf(piece).id,
        strength: strengthOf(bits),
        params: { bits, reliability: 100 * piece.reliability, from, to },
        reason: piece.reason,
        source: piece.source,
        against: contradictedBy(piece.id, estimate.conflicts),
      };
    })
    .sort((a, b) => b.params.bits - a.params.bits || (a.evidenceId < b.evidenceId ? -1 : 1));
}

function contradictedBy(id: string, conflicts: Estimate["conflicts"]): readonly string[] {
  const others = conflicts.filter((set) => set.includes(id)).flat();
  return [...new Set(others)].filter((other) => other !== id).sort();
}
