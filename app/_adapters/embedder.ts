import { performance } from "node:perf_hooks";
import { embedQuery, embedReference, modelFacts } from "#ml/embed";
import { type ModelFacts, readModelFacts, readNetwork } from "#ml/model";
import { decode } from "#ml/preprocess";
import type { Embedder } from "../_usecases/ports.ts";

/** The model of a folder as the use cases see it, loaded. Fails when its checksum is not the one it names. */
export async function loadModel(folder: string): Promise<Embedder> {
  return embedderOf(await modelFacts(folder), folder);
}

/** The same, verified now and loaded when it is first asked. */
export async function openModel(folder: string): Promise<Embedder> {
  const facts = await readModelFacts(folder);
  await readNetwork(facts, folder);
  return embedderOf(facts, folder);
}

function embedderOf(facts: ModelFacts, folder: string): Embedder {
  return {
    model: facts.id,
    dimension: facts.dimension,
    likeness: facts.likeness,
    async embedReference(image, region) {
      return embedReference(await decode(Buffer.from(image), region), folder);
    },
    async embedQuery(image, region) {
      const begun = performance.now();
      const patch = await decode(Buffer.from(image), region);
      const prepared = performance.now();
      const vectors = await embedQuery(patch, undefined, folder);
      return { vectors, preprocessMs: prepared - begun, embedMs: performance.now() - prepared };
    },
  };
}
