import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { type Calibration, parseCalibration } from "#core/similarity/calibration";
import { embedQuery, embedReference, judgePairs, modelFacts } from "#ml/embed";
import { filesOf, type ModelFacts, readCalibration, readModelFacts, readNetwork } from "#ml/model";
import { decode } from "#ml/preprocess";
import type { Embedder } from "../_usecases/ports.ts";

/** The model of a folder as the use cases see it, loaded. Fails when its checksum is not the one it names. */
export async function loadModel(folder: string): Promise<Embedder> {
  return embedderOf(await modelFacts(folder), folder, await calibrationOf(folder));
}

/** The same, verified now and loaded when it is first asked. */
export async function openModel(folder: string): Promise<Embedder> {
  const facts = await readModelFacts(folder);
  for (const file of filesOf(facts)) await readNetwork(file, folder);
  return embedderOf(facts, folder, await calibrationOf(folder));
}

/**
 * The calibration beside a network; null when there is none.
 * @throws Error naming the file, the field, the rule and the value received
 */
async function calibrationOf(folder: string): Promise<Calibration | null> {
  const json = await readCalibration(folder);
  if (json === null) return null;
  const parsed = parseCalibration(json);
  if (parsed.ok) return parsed.value;
  const { field, rule, received } = parsed.error;
  throw new Error(`${join(folder, "calibration.json")}: ${field} must be ${rule}. Received ${received}.`);
}

function embedderOf(facts: ModelFacts, folder: string, calibration: Calibration | null): Embedder {
  return {
    model: facts.id,
    dimension: facts.dimension,
    likeness: facts.likeness,
    // Another network's curve says nothing about this one's cosines.
    calibration: calibration?.model === facts.id ? calibration : null,
    async embedReference(image, region) {
      return embedReference(await decode(Buffer.from(image), region), folder);
    },
    judge: (pairs) => judgePairs(pairs, folder),
    async embedQuery(image, region) {
      const begun = performance.now();
      const patch = await decode(Buffer.from(image), region);
      const prepared = performance.now();
      const vectors = await embedQuery(patch, undefined, folder);
      return { vectors, preprocessMs: prepared - begun, embedMs: performance.now() - prepared };
    },
  };
}
