import type { FieldError } from "#core/field-error";
import { answeringModel } from "#core/models/decide-models";
import { fail, ok, type Result } from "#core/result";
import type { Embedder, Embedders, Models } from "./ports.ts";

type Needs = { readonly embedders: Embedders; readonly models: Models };

/**
 * The model that answers look-ups now. While a new one is filled the old one answers, if its files are still here.
 * @returns as the error, that the reference is being prepared for the model in place, and how far that has come
 */
export async function chooseModel({ embedders, models }: Needs): Promise<Result<Embedder, FieldError>> {
  const { model } = embedders.inPlace;
  const embedder = await embedders.find(answeringModel(await models.all(), model));
  if (embedder) return ok(embedder);
  const { done, of } = await models.coverage(model);
  return fail({ field: "request", rule: "preparing", received: model, params: { done, of } });
}
