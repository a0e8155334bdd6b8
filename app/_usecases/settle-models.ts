import { decideAtStart } from "#core/models/decide-models";
import type { KnownModel } from "#core/models/known-model";
import type { Embedders, Models } from "./ports.ts";

/**
 * Brings the model in place into this reference: answering in a new one, to be filled where another answers. Its
 * files are kept, so that it can go on answering after the next one has come.
 * @returns the models as they are now
 */
export async function settleModels({
  embedders,
  models,
}: {
  readonly embedders: Embedders;
  readonly models: Models;
}): Promise<readonly KnownModel[]> {
  const changes = decideAtStart(await models.all(), embedders.inPlace);
  await embedders.keep();
  if (changes.length > 0) await models.change(changes);
  return models.all();
}
