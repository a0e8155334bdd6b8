import type { Calibration } from "../../app/_core/similarity/calibration.ts";
import { type Described, embedQuery, embedReference, judgePairs, turnsOf } from "../embed.ts";
import type { Patch } from "../preprocess.ts";
import type { Judge } from "./pairs.ts";

/** A way of describing photographs by vectors of unit length, so that a dot product is the similarity. */
export type Method = {
  readonly name: string;
  reference(patch: Patch): Promise<Described>;
  /** One description for each direction the query is turned to. */
  query(patch: Patch): Promise<readonly Described[]>;
  /** Compares details of the nearest; null for a method that compares none. */
  readonly judge: Judge | null;
  /** How similarities become probabilities; null for a method that gives none. */
  readonly calibration: Calibration | null;
};

/**
 * The shipped pipeline.
 * @param rerank whether the details of the nearest are compared too
 */
export function shipped(id: string, turns: number, calibration: Calibration | null, rerank = true): Method {
  return {
    name: id,
    calibration,
    reference: (patch) => embedReference(patch),
    query: (patch) => embedQuery(patch, turns),
    judge: rerank ? (pairs) => judgePairs(pairs) : null,
  };
}

/**
 * A baseline that sees the same squares, turned the same way, as the shipped pipeline does.
 * @param side pixels of a side that it wants
 * @param describe a standardised square to its vector of unit length
 */
export function baseline(
  name: string,
  turns: number,
  side: number,
  describe: (picture: Float32Array) => Promise<Float32Array> | Float32Array,
): Method {
  const of = (patch: Patch, count: number) =>
    Promise.all(
      turnsOf(patch, count, side).map(async ({ picture }) => ({
        vector: await describe(picture),
        details: null,
      })),
    );
  return {
    name,
    calibration: null,
    judge: null,
    reference: async (patch) => (await of(patch, 1))[0] ?? { vector: new Float32Array(), details: null },
    query: (patch) => of(patch, turns),
  };
}
