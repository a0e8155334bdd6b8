import { answeringModel, decideSwitch } from "#core/models/decide-models";
import type { Coverage } from "#core/models/known-model";
import { withMargin } from "#core/photographs/region";
import type { Blobs, Described, Embedder, Embedders, Models, PhotographToEmbed } from "./ports.ts";

type Needs = { readonly embedders: Embedders; readonly models: Models; readonly blobs: Blobs };

export type ReembedOptions = {
  /** Stops it after the photograph it is at; what is done stays done. */
  readonly signal?: AbortSignal;
  /** Awaited before each photograph, so that look-ups can go first. */
  readonly pause?: () => Promise<void>;
  readonly onProgress?: (progress: Coverage & { readonly model: string }) => void;
  /** Lets the new model answer although some photographs can't be embedded. */
  readonly leaveOut?: boolean;
};

export type Reembedded = Coverage & {
  /** name@version of the model in place */
  readonly model: string;
  /** Photographs that can't be embedded, by image, with the reason; those after the first hundred are not named. */
  readonly failed: readonly { readonly sha256: string; readonly why: string }[];
  readonly failures: number;
  /** It was this run that let the model in place answer. */
  readonly switched: boolean;
  readonly answers: boolean;
  readonly stopped: boolean;
};

/** Photographs between two writes: what a stop or a crash can cost. */
const BATCH = 8;
const NAMED = 100;

/**
 * Gives every photograph that entries show now a vector of the model in place, and lets that model answer when all
 * have one. It can be stopped and begun again at any time, and goes on where it was; doing it twice does nothing.
 */
export async function reembed(needs: Needs, options: ReembedOptions = {}): Promise<Reembedded> {
  const { models } = needs;
  const { model } = needs.embedders.inPlace;
  const isFilling = (await models.all()).some((k) => k.model === model && k.state === "filling");
  for (;;) {
    const { embedded, failed, failures, stopped } = await embedLacking(needs, options);
    let comeMeanwhile = false;
    const changes =
      stopped || !isFilling
        ? []
        : await models.switchOver((known, filled) => {
            comeMeanwhile = filled.done + failures < filled.of;
            return decideSwitch(known, filled, options.leaveOut ? failures : 0);
          });
    if (comeMeanwhile && embedded > 0) continue;
    const counts = await models.coverage(model);
    const answers = answeringModel(await models.all(), model) === model;
    return { model, ...counts, failed, failures, switched: changes.length > 0, answers, stopped };
  }
}

/** One pass over the photographs without a vector. */
async function embedLacking({ embedders, models, blobs }: Needs, options: ReembedOptions) {
  const { inPlace } = embedders;
  const { signal, pause, onProgress } = options;
  const failed: { sha256: string; why: string }[] = [];
  let failures = 0;
  let embedded = 0;
  const before = await models.coverage(inPlace.model);
  const tell = () =>
    onProgress?.({ model: inPlace.model, done: Math.min(before.done + embedded, before.of), of: before.of });
  tell();
  for (let after: string | null = null; ; ) {
    const batch = await models.lacking(inPlace.model, after, BATCH);
    const vectors: (Described & { id: string })[] = [];
    for (const photograph of batch) {
      await pause?.();
      if (signal?.aborted) break;
      const result = await embedOne(inPlace, blobs, photograph);
      if (typeof result !== "string") vectors.push({ id: photograph.id, ...result });
      else if (++failures <= NAMED) failed.push({ sha256: photograph.sha256, why: result });
    }
    if (vectors.length > 0) await models.addVectors(inPlace.model, vectors);
    embedded += vectors.length;
    tell();
    after = batch.at(-1)?.id ?? null;
    if (signal?.aborted || after === null)
      return { failed, failures, embedded, stopped: signal?.aborted ?? false };
  }
}

/** @returns why not, when the photograph can't be embedded */
async function embedOne(
  embedder: Embedder,
  blobs: Blobs,
  photograph: PhotographToEmbed,
): Promise<Described | string> {
  const bytes = await blobs.get(photograph.sha256);
  if (bytes === null) return "its image is missing";
  try {
    return await embedder.embedReference(bytes, withMargin(photograph.region, photograph));
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
