import { join } from "node:path";
import { decode } from "../preprocess.ts";
import { readClasses } from "./folders.ts";
import { likeliest } from "./likeliest.ts";
import type { Progress } from "./measure.ts";
import type { Method } from "./method.ts";
import type { Known } from "./rank.ts";

export type TwinFigures = { readonly queries: number; readonly accuracy: number };

/**
 * Near twins: marks in pairs that differ in one thing, in folders named alike but for a last letter, a or b. How often a
 * photograph's own mark stands above its twin.
 * @param folder holds references/<pair>a|b/<image> and queries/<pair>a|b/<image>
 * @throws Error naming a query whose mark or twin has no reference
 */
export async function measureTwins(method: Method, folder: string, progress: Progress): Promise<TwinFigures> {
  const references = new Map<string, Known[]>();
  for (const { label, path } of await readClasses(join(folder, "references"), "--twins")) {
    const described = await method.reference(await decode(path));
    const pair = label.slice(0, -1);
    references.set(pair, [...(references.get(pair) ?? []), { label, described }]);
  }
  const queries = await readClasses(join(folder, "queries"), "--twins");
  let right = 0;
  for (const [i, { label, path }] of queries.entries()) {
    const both = references.get(label.slice(0, -1)) ?? [];
    if (new Set(both.map((each) => each.label)).size !== 2)
      throw new Error(`--twins: each query needs a reference of its mark and of its twin. Received ${path}.`);
    if ((await likeliest(method, await decode(path), both)) === label) right++;
    progress(`${method.name}: near twins`, i + 1, queries.length);
  }
  return { queries: queries.length, accuracy: right / queries.length };
}
