import { randomBytes } from "node:crypto";
import { copyFile, mkdir, readdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { unloadModel } from "#ml/embed";
import { filesOf, type ModelFacts, modelFolder, readModelFacts } from "#ml/model";
import type { Embedder, Embedders } from "../_usecases/ports.ts";
import { loadModel, openModel } from "./embedder.ts";
import { isModelName } from "./model-index.ts";

/**
 * The model in place, and the models kept in `<folder>/<name@version>` as they were when they were first used, so
 * that one can go on answering after an update has put another in its place.
 * @param place the folder of the model in place
 */
export async function createEmbedders(folder: string, place = modelFolder()): Promise<Embedders> {
  const inPlace = await loadModel(place);
  const opened = new Map<string, Promise<Embedder | null>>();
  return {
    inPlace,
    async find(model) {
      if (model === inPlace.model) return inPlace;
      if (!isModelName(model)) return null;
      const known = opened.get(model) ?? openKept(folder, model);
      opened.set(model, known);
      const embedder = await known;
      // Asked again, it is looked for again: the operator may have put the files back.
      if (embedder === null) opened.delete(model);
      return embedder;
    },
    async keep() {
      const facts = await readModelFacts(place);
      const target = join(folder, facts.id);
      const kept = await readModelFacts(target).catch(() => null);
      if (kept !== null && sumsOf(kept) !== sumsOf(facts))
        throw new Error(
          `${place}: a network must have a version of its own. Received ${facts.id} with SHA-256 ${sumsOf(facts)}; ` +
            `${target} keeps another under that name, with ${sumsOf(kept)}.`,
        );
      if ((await openKept(folder, facts.id)) === null) await copyWhole(place, target);
    },
    async forget(model) {
      if (!isModelName(model)) return;
      opened.delete(model);
      await unloadModel(join(folder, model));
      await rm(join(folder, model), { recursive: true, force: true });
    },
  };
}

const sumsOf = (facts: ModelFacts): string =>
  filesOf(facts)
    .map(({ sha256 }) => sha256)
    .join(", ");

/** @returns null when the files are missing, damaged, or say that they are another model */
async function openKept(folder: string, model: string): Promise<Embedder | null> {
  const embedder = await openModel(join(folder, model)).catch(() => null);
  return embedder?.model === model ? embedder : null;
}

/** A folder appears whole or not at all. */
async function copyWhole(from: string, to: string): Promise<void> {
  const half = `${to}.${randomBytes(6).toString("hex")}`;
  await mkdir(half, { recursive: true, mode: 0o700 });
  const files = (await readdir(from, { withFileTypes: true })).filter((entry) => entry.isFile());
  for (const { name } of files) await copyFile(join(from, name), join(half, name));
  await rm(to, { recursive: true, force: true });
  await rename(half, to);
}
