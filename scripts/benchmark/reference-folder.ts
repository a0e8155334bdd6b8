import type { ImportFolder } from "#usecases/ports";
import { photographReference } from "./draw-marks.ts";

/** Photographs of one entry. */
const EACH = 5;

/**
 * A folder to import that is on no disk: entries of drawn marks with five photographs each, drawn beforehand so
 * that an import's time is the import's alone.
 * @param from the first photograph's number, a multiple of five
 * @param count photographs, a multiple of five
 */
export async function drawReferenceFolder(from: number, count: number): Promise<ImportFolder> {
  if (from % EACH !== 0 || count % EACH !== 0)
    throw new RangeError(`from and count must be multiples of ${EACH}. Received ${from} and ${count}.`);
  const numbers = Array.from({ length: count }, (_, i) => from + i);
  const images = new Map<string, Uint8Array>();
  const waiting = [...numbers];
  const draw = async () => {
    for (let n = waiting.shift(); n !== undefined; n = waiting.shift())
      images.set(fileOf(n), await photographReference(Math.floor(n / EACH), n % EACH));
  };
  await Promise.all([draw(), draw(), draw()]);
  const record = (file: string, line: number, columns: Record<string, string>) => ({ file, line, columns });
  return {
    makers: [],
    errors: [],
    entries: numbers
      .filter((n) => n % EACH === 0)
      .map((n, i) => {
        const title = `Drawn mark ${n / EACH}`;
        return record("entries", i + 2, { key: slugOf(n / EACH), title, kind: "mark", material: "pewter" });
      }),
    photographs: numbers.map((n, i) =>
      record("photographs", i + 2, {
        file: fileOf(n),
        entry: slugOf(Math.floor(n / EACH)),
        licence: "CC0-1.0",
        credit: "drawn for a measurement",
      }),
    ),
    photograph: async (file) => images.get(file) ?? null,
  };
}

/** The key of the entry of a drawn mark. */
export const slugOf = (mark: number): string => `drawn-mark-${mark}`;

/** How many marks a number of photographs shows. */
export const marksIn = (photographs: number): number => photographs / EACH;

const fileOf = (photograph: number) => `${photograph}.jpg`;
