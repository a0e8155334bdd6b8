// What a worker thread loads: the long computations by name, each a function of one message that gives one answer.
// A thread reads TypeScript only with the loader, whatever the process that started it was given.
import { register } from "tsx/esm/api";

register();

/** @param {{ query: import("./verify.ts").Photographed, reference: import("./verify.ts").Photographed }} asked */
export async function alignPair({ query, reference }) {
  const { alignPhotographs } = await import("./verify.ts");
  return alignPhotographs(query, reference);
}

/** @param {import("./verify.ts").Photographed} asked */
export async function readRegion({ photograph, region }) {
  const { readLetters } = await import("./letters/read-letters.ts");
  return readLetters(photograph, region);
}
