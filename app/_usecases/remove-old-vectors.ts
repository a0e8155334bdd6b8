import { decideRemoval } from "#core/models/decide-models";
import type { Clock, Embedders, Models } from "./ports.ts";

type Needs = { readonly embedders: Embedders; readonly models: Models; readonly clock: Clock };

/**
 * Removes what retired models have left: their vectors and their kept files.
 * @param days how long they are kept after another model took over
 * @returns the models removed
 */
export async function removeOldVectors(needs: Needs, days: number): Promise<readonly string[]> {
  const { embedders, models, clock } = needs;
  const removed: string[] = [];
  for (const model of decideRemoval(await models.all(), clock.now(), days)) {
    if (!(await models.remove(model))) continue;
    await embedders.forget(model);
    removed.push(model);
  }
  return removed;
}
