// What a worker thread loads: the long computations by name, each a function of one message that gives one answer.
// A thread reads TypeScript only with the loader, whatever the process that started it was given.
import { register } from "tsx/esm/api";

register();
const { alignPhotographs } = await import("./verify.ts");

/** @param {{ query: import("./verify.ts").Photographed, reference: import("./verify.ts").Photographed }} asked */
export const alignPair = ({ query, reference }) => alignPhotographs(query, reference);
