import type { Calibration } from "../../app/_core/similarity/calibration.ts";
import { embedQuery, embedReference, turnsOf } from "../embed.ts";
import type { Patch } from "../preprocess.ts";

/** A way of describing photographs by vectors of unit length, so that a dot product is the similarity. */
export type Method = {
  readonly name: string;
  reference(patch: Patch): Promise<Float32Array>;
  /** One vector for each direction the query is turned to. */
  query(patch: Patch): Promise<readonly Float32Array[]>;
  /** How similarities become probabilities; null for a method that gives none. */
  readonly calibration: Calibration | null;
};

/** The shipped pipeline. */
export function shipped(id: string, turns: number, calibration: Calibration | null): Method {
  return {
    name: id,
    calibration,
    reference: embedReference,
    query: async (patch) => (await embedQuery(patch, turns)).map(({ vector }) => vector),
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
    Promise.all(turnsOf(patch, count, side).map(({ picture }) => describe(picture)));
  return {
    name,
    calibration: null,
    reference: async (patch) => (await of(patch, 1))[0] ?? new Float32Array(),
    query: (patch) => of(patch, turns),
  };
}
