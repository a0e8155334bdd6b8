import type { Coverage, KnownModel, ModelChange } from "#core/models/known-model";
import type { Region } from "#core/photographs/region";
import type { Calibration } from "#core/similarity/calibration";
import type { LikenessThresholds } from "#core/similarity/likeness";

/** What a model makes of a photograph: a vector of unit length and, from some models, details to compare closely. */
export type Described = { readonly vector: Float32Array; readonly details: Int8Array | null };

export type QueryVector = Described & { readonly turn: number };

/** A vision model: photograph and region in, unit vectors out. */
export type Embedder = {
  /** name@version */
  readonly model: string;
  /** A vector's length. */
  readonly dimension: number;
  readonly likeness: LikenessThresholds;
  /** How its similarities become probabilities; null for a model that none was fitted for. */
  readonly calibration: Calibration | null;
  embedReference(image: Uint8Array, region: Region): Promise<Described>;
  /** Natural log-odds that query and reference show one mark; null where there are no details to judge by. */
  judge(
    pairs: readonly { readonly query: Described; readonly reference: Described }[],
  ): Promise<readonly (number | null)[]>;
  embedQuery(
    image: Uint8Array,
    region: Region,
  ): Promise<{
    readonly vectors: readonly QueryVector[];
    readonly preprocessMs: number;
    readonly embedMs: number;
  }>;
};

/** The vision models whose files are here. */
export type Embedders = {
  /** The one that came with the program, or that the operator named. */
  readonly inPlace: Embedder;
  /** One by name@version; null when its files are not here, or not what they were. */
  find(model: string): Promise<Embedder | null>;
  /**
   * Copies the files of the one in place to where they outlast an update; does nothing when they are there.
   * @throws Error when another network of the same name and version is kept already
   */
  keep(): Promise<void>;
  /** Removes the kept files of a model. */
  forget(model: string): Promise<void>;
};

/** A photograph that lacks a vector. */
export type PhotographToEmbed = {
  readonly id: string;
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
};

/** Which models have vectors in this reference, and what they do. */
export type Models = {
  all(): Promise<readonly KnownModel[]>;
  /** Makes changes in one step; a model's index is made when it comes into use and dropped when it is retired. */
  change(changes: readonly ModelChange[]): Promise<void>;
  coverage(model: string): Promise<Coverage>;
  /** Photographs that entries show now and that lack a vector of the model, by id, after the one given. */
  lacking(model: string, after: string | null, limit: number): Promise<readonly PhotographToEmbed[]>;
  /** Adds vectors; those that are there already are left alone. */
  addVectors(model: string, vectors: readonly (Described & { readonly id: string })[]): Promise<void>;
  /** Removes a retired model with its vectors; false when it is not retired. */
  remove(model: string): Promise<boolean>;
  /**
   * Decides on what is known and on the coverage of the model being filled, and makes the changes, with nobody
   * adding photographs or changing models in between.
   * @returns the changes made
   */
  switchOver(
    decide: (known: readonly KnownModel[], filled: Coverage) => readonly ModelChange[],
  ): Promise<readonly ModelChange[]>;
};
