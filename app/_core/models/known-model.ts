/**
 * `answering`: look-ups are answered with its vectors; one at a time. `filling`: photographs are being embedded with
 * it, and it will answer; one at a time. `retired`: it answered or was filled once; its vectors may be removed.
 */
export type ModelState = "answering" | "filling" | "retired";

/** A model that has, or had, vectors in this reference. */
export type KnownModel = {
  /** name@version */
  readonly model: string;
  /** A vector's length. */
  readonly dimension: number;
  readonly state: ModelState;
  /** When it came into this state. */
  readonly since: Date;
};

/** A model comes into a state. */
export type ModelChange = Omit<KnownModel, "since">;

/** How many of the photographs that entries show now have a vector of a model. */
export type Coverage = { readonly done: number; readonly of: number };
