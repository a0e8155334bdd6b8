import { proposeRegions } from "#ml/propose";
import type { MarkFinder } from "../_usecases/ports.ts";

/** The network that finds marks, loaded when it is first asked. */
export function createMarkFinder(): MarkFinder {
  return { find: (image) => proposeRegions(Buffer.from(image)) };
}
