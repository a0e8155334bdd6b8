import type { Alignment } from "#core/photographs/alignment";
import { alignPhotographs } from "#ml/verify";
import type { Aligner, ImageToAlign } from "../_usecases/ports.ts";

/** Answers kept in memory; one is about 30 kB. */
const KEPT = 200;

/** Aligns by local features, and remembers the latest answers by the two images and their regions. */
export function createAligner(align: typeof alignPhotographs = alignPhotographs): Aligner {
  const kept = new Map<string, Promise<Alignment>>();
  return {
    async align(query, reference) {
      const key = `${nameOf(query)} ${nameOf(reference)}`;
      const answer =
        kept.get(key) ??
        align(
          { photograph: Buffer.from(query.bytes), region: query.region },
          { photograph: Buffer.from(reference.bytes), region: reference.region },
        );
      // Put at the end again: the first is the one asked for longest ago.
      kept.delete(key);
      kept.set(key, answer);
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      try {
        return await answer;
      } catch (error) {
        kept.delete(key);
        throw error;
      }
    },
  };
}

function nameOf({ sha256, region: { x, y, width, height, turn } }: ImageToAlign): string {
  return [sha256, x, y, width, height, turn].join(",");
}
