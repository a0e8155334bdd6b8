import { modelsForNewPhotographs } from "#core/models/decide-models";
import { type Region, withMargin } from "#core/photographs/region";
import type { Described, Embedder, Embedders, Models } from "../ports.ts";

/** While a new model is filled, photographs get vectors of both; an old one whose files are gone is left behind. */
export async function embeddersInUse({
  embedders,
  models,
}: {
  readonly embedders: Embedders;
  readonly models: Models;
}): Promise<readonly Embedder[]> {
  const names = modelsForNewPhotographs(await models.all(), embedders.inPlace.model);
  return (await Promise.all(names.map((name) => embedders.find(name)))).filter((e) => e !== null);
}

/** What each model makes of the region of a photograph, by the model's name. */
export async function describePhotograph(
  embedders: readonly Embedder[],
  image: { readonly bytes: Uint8Array; readonly width: number; readonly height: number },
  region: Region,
): Promise<ReadonlyMap<string, Described>> {
  const vectors = new Map<string, Described>();
  for (const embedder of embedders)
    vectors.set(embedder.model, await embedder.embedReference(image.bytes, withMargin(region, image)));
  return vectors;
}
