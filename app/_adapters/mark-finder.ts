import { createHash } from "node:crypto";
import { proposeRegions } from "#ml/propose";
import type { MarkFinder } from "../_usecases/ports.ts";
import { rememberLast } from "./remember-last.ts";

/** Answers kept in memory; one is a few hundred bytes. */
const KEPT = 500;

/** The network that finds marks, loaded when it is first asked; it remembers where it found them last. */
export function createMarkFinder(): MarkFinder {
  const remember = rememberLast<Awaited<ReturnType<MarkFinder["find"]>>>(KEPT);
  return {
    find: (image) =>
      remember(createHash("sha256").update(image).digest("hex"), () => proposeRegions(Buffer.from(image))),
  };
}
