import { cache } from "react";
import type { EntryView } from "#core/entries/entry";
import type { MakerSummary, MakerView } from "#core/entries/maker";
import type { EntryPage, EntryQuery } from "#core/entries/query";
import { isSlug } from "#core/entries/slug";
import type { FieldError } from "#core/field-error";
import type { LookUpView } from "#core/look-ups/look-up";
import type { PhotographToTry } from "#core/look-ups/photograph-to-try";
import type { Calibration } from "#core/similarity/calibration";
import { chooseModel } from "#usecases/look-up-mark";
import { showLookUp as show } from "#usecases/show-look-up";
import { live } from "./live.ts";
import { ownerHash } from "./owner.ts";

export { parseEntryQuery } from "./entry-query.ts";
export { readRefusal } from "./refusal.ts";

/** An entry by its slug; asked twice in one request, it is read once. */
export const showEntry = cache(
  async (slug: string): Promise<EntryView | null> =>
    isSlug(slug) ? (await live()).entries.bySlug(slug) : null,
);

export const showMaker = cache(
  async (slug: string): Promise<MakerView | null> =>
    isSlug(slug) ? (await live()).makers.bySlug(slug) : null,
);

export async function listMakers(words: string): Promise<readonly MakerSummary[]> {
  return (await live()).makers.list(words.replaceAll("\0", "").slice(0, 200));
}

export async function searchEntries(query: EntryQuery): Promise<EntryPage> {
  return (await live()).entries.search(query);
}

/** A look-up, and whether this browser's owner cookie made it. */
export const showLookUp = cache(async (id: string): Promise<{ view: LookUpView; mine: boolean } | null> => {
  const found = await show(await live(), id);
  return found && { view: found.view, mine: found.kept.ownerHash === (await ownerHash()) };
});

/** Materials that entries name. */
export async function materials(): Promise<readonly string[]> {
  return (await live()).readings.materials();
}

export async function photographsToTry(): Promise<readonly PhotographToTry[]> {
  return (await live()).photographsToTry.all();
}

export async function referenceCounts() {
  return (await live()).entries.counts();
}

/** Why look-ups can't be answered just now, when a new model is being brought in and the old one is gone; else null. */
export async function preparation(): Promise<FieldError | null> {
  const chosen = await chooseModel(await live());
  return chosen.ok ? null : chosen.error;
}

/**
 * How a model's similarities become probabilities; its calibration is null when it has none, or is not here.
 * @param asked name@version; null for the model that answers now
 */
export async function calibrationFor(
  asked: string | null,
): Promise<{ readonly model: string; readonly calibration: Calibration | null }> {
  const wired = await live();
  if (asked !== null) {
    const calibration = (await wired.embedders.find(asked))?.calibration ?? null;
    return { model: asked.slice(0, 80), calibration };
  }
  const chosen = await chooseModel(wired);
  const { model, calibration } = chosen.ok ? chosen.value : wired.embedders.inPlace;
  return { model, calibration };
}

/** Days a look-up is kept unless its owner keeps it. */
export async function lookUpDays(): Promise<number> {
  return (await live()).environment.lookUpDays;
}
