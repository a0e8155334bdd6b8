import { createHash } from "node:crypto";
import { importReferences } from "#usecases/import-references";
import type { Described, Embedder } from "#usecases/ports";
import type { Live } from "#web/live";
import { drawReferenceFolder } from "./reference-folder.ts";

/** What an import of a thousand photographs or so cost. */
export type ImportCost = {
  readonly photographs: number;
  readonly seconds: number;
  /** Processor time over wall time: how many cores it kept busy. */
  readonly cores: number;
  /** Milliseconds of each part for one photograph; parts of several photographs overlap. */
  readonly parts: Readonly<Record<"read" | "embed" | "keep" | "record", number>>;
};

/** Vectors by image, so that filling a second database need not compute the same again. */
export type Remembered = Map<string, Described>;

/**
 * Takes drawn references in through the import's own use case.
 * @param remembered vectors to use instead of the model where they are known, and to add to; null to always compute
 */
export async function fill(
  wired: Live,
  from: number,
  count: number,
  remembered: Remembered | null,
): Promise<ImportCost> {
  const folder = await drawReferenceFolder(from, count);
  const spent = { read: 0, embed: 0, keep: 0, record: 0 };
  const timed =
    <A extends unknown[], R>(part: keyof typeof spent, work: (...words: A) => Promise<R>) =>
    async (...words: A): Promise<R> => {
      const began = performance.now();
      try {
        return await work(...words);
      } finally {
        spent[part] += performance.now() - began;
      }
    };
  const { inPlace } = wired.embedders;
  const embedder = remembered ? remembering(inPlace, remembered) : inPlace;
  const measured = { ...embedder, embedReference: timed("embed", embedder.embedReference) };
  const needs = {
    ...wired,
    images: { ...wired.images, read: timed("read", wired.images.read) },
    blobs: { ...wired.blobs, put: timed("keep", wired.blobs.put) },
    embedders: { ...wired.embedders, inPlace: measured, find: async () => measured },
    references: { ...wired.references, record: timed("record", wired.references.record) },
  };
  const cpu = process.cpuUsage();
  const began = performance.now();
  const result = await importReferences(needs, folder, { dryRun: false, by: "benchmark" });
  const seconds = (performance.now() - began) / 1000;
  const used = process.cpuUsage(cpu);
  if (!result.ok) throw new Error(`The drawn references were refused: ${JSON.stringify(result.error[0])}`);
  return {
    photographs: count,
    seconds,
    cores: (used.user + used.system) / 1e6 / seconds,
    parts: {
      read: spent.read / count,
      embed: spent.embed / count,
      keep: spent.keep / count,
      record: spent.record / count,
    },
  };
}

function remembering(embedder: Embedder, remembered: Remembered): Embedder {
  return {
    ...embedder,
    async embedReference(image, region) {
      const key = `${createHash("sha256").update(image).digest("hex")} ${JSON.stringify(region)}`;
      const described = remembered.get(key) ?? (await embedder.embedReference(image, region));
      remembered.set(key, described);
      return described;
    },
  };
}
