import type { Coverage, KnownModel } from "#core/models/known-model";
import type { Embedders, Models } from "./ports.ts";

type Needs = { readonly embedders: Pick<Embedders, "find">; readonly models: Models };

/** A model, how many photographs have its vectors, and whether its files are here and whole. */
export type DescribedModel = Pick<KnownModel, "model" | "state"> & Coverage & { readonly isHere: boolean };

/** The models of this reference, and how far each has come. */
export async function describeModels({ embedders, models }: Needs): Promise<readonly DescribedModel[]> {
  const described: DescribedModel[] = [];
  for (const { model, state } of await models.all())
    described.push({
      model,
      state,
      ...(await models.coverage(model)),
      isHere: (await embedders.find(model)) !== null,
    });
  return described;
}
