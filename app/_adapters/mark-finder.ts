import { createHash } from "node:crypto";
import { proposeRegions } from "#ml/propose";
import type { MarkFinder } from "../_usecases/ports.ts";

/** Answers kept in memory; one is a few hundred bytes. */
const KEPT = 500;

/** The network that finds marks, loaded when it is first asked; it remembers where it found them last. */
export function createMarkFinder(find: MarkFinder["find"] = propose): MarkFinder {
  const kept = new Map<string, ReturnType<MarkFinder["find"]>>();
  return {
    find(image) {
      const key = createHash("sha256").update(image).digest("hex");
      const answer = kept.get(key) ?? find(image);
      // Put at the end again: the first is the one asked for longest ago.
      kept.delete(key);
      kept.set(key, answer);
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      answer.catch(() => kept.delete(key));
      return answer;
    },
  };
}

const propose: MarkFinder["find"] = (image) => proposeRegions(Buffer.from(image));
