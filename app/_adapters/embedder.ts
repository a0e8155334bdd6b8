import { performance } from "node:perf_hooks";
import { embedQuery, embedReference, modelFacts } from "#ml/embed";
import { decode } from "#ml/preprocess";
import type { Embedder } from "../_usecases/ports.ts";

/** The bundled vision model as the use cases see it. Loading fails when the model's checksum is not the card's. */
export async function createEmbedder(): Promise<Embedder> {
  const facts = await modelFacts();
  return {
    model: `${facts.name}@${facts.version}`,
    likeness: facts.likeness,
    async embedReference(image, region) {
      return embedReference(await decode(Buffer.from(image), region));
    },
    async embedQuery(image, region) {
      const begun = performance.now();
      const patch = await decode(Buffer.from(image), region);
      const prepared = performance.now();
      const vectors = await embedQuery(patch);
      return { vectors, preprocessMs: prepared - begun, embedMs: performance.now() - prepared };
    },
  };
}
