import type { Patch } from "../preprocess.ts";
import { answer, weigh } from "./chances.ts";
import type { Method } from "./method.ts";
import { comparePairs } from "./pairs.ts";
import { compare, type Known, rank } from "./rank.ts";

/** The class that comes first for a photograph, as a look-up puts it. */
export async function likeliest(
  method: Method,
  photograph: Patch,
  references: readonly Known[],
): Promise<string | undefined> {
  const described = await method.query(photograph);
  const similarities = compare(described, references);
  if (!method.calibration) return rank(similarities, references)[0]?.label;
  const pairScores = method.judge
    ? await comparePairs([{ described, similarities }], references, method.judge)
    : undefined;
  const weighed = weigh([similarities], references, pairScores);
  return answer(weighed, references.length, method.calibration).labels[0];
}
