import type { Coverage, KnownModel, ModelChange } from "./known-model.ts";

type InPlace = Pick<KnownModel, "model" | "dimension">;

const DAY = 24 * 60 * 60 * 1000;

/**
 * What changes when a host starts with a model in place. Into a reference that no model has answered for yet it comes
 * answering; beside another that answers, it is filled first. A model that was being filled and is no longer in place
 * is given up. Nothing changes the second time.
 * @returns changes in an order in which never two models answer or are filled at once
 */
export function decideAtStart(known: readonly KnownModel[], inPlace: InPlace): readonly ModelChange[] {
  const givenUp = known.filter((k) => k.state === "filling" && k.model !== inPlace.model).map(retired);
  const own = known.find((k) => k.model === inPlace.model);
  if (own && own.state !== "retired") return givenUp;
  const state = known.some((k) => k.state === "answering") ? "filling" : "answering";
  return [...givenUp, { ...inPlace, state }];
}

/** Which model answers look-ups; a new reference is answered for by the model in place. */
export function answeringModel(known: readonly KnownModel[], inPlace: string): string {
  return known.find((k) => k.state === "answering")?.model ?? inPlace;
}

/**
 * Is it time for the model that is being filled to answer? When every photograph that entries show has its vector.
 * @param leftOut photographs that can't be embedded and that the operator said to go without; never more than half,
 *   since then it is not the photographs that something is wrong with
 * @returns the changes, to be made in one step; none when it is not time
 */
export function decideSwitch(
  known: readonly KnownModel[],
  filled: Coverage,
  leftOut = 0,
): readonly ModelChange[] {
  const filling = known.find((k) => k.state === "filling");
  if (!filling || filled.done + leftOut < filled.of || leftOut * 2 > filled.of) return [];
  const answering = known.filter((k) => k.state === "answering").map(retired);
  return [...answering, { ...changeOf(filling), state: "answering" }];
}

/** The models that a new photograph gets vectors of: the one that answers, and the one that will. */
export function modelsForNewPhotographs(known: readonly KnownModel[], inPlace: string): readonly string[] {
  const inUse = known.filter((k) => k.state !== "retired").map((k) => k.model);
  return inUse.length === 0 ? [inPlace] : inUse;
}

/** Retired models whose vectors have been kept for so many days, in case one wants to go back. */
export function decideRemoval(known: readonly KnownModel[], now: Date, days: number): readonly string[] {
  return known
    .filter((k) => k.state === "retired" && now.getTime() - k.since.getTime() >= days * DAY)
    .map((k) => k.model);
}

const changeOf = ({ model, dimension, state }: KnownModel): ModelChange => ({ model, dimension, state });
const retired = (known: KnownModel): ModelChange => ({ ...changeOf(known), state: "retired" });
