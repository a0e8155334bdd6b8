import type { Reading } from "#ml/letters/read-letters";
import type { Photographed } from "#ml/verify";
import type { LettersReader } from "../_usecases/ports.ts";
import { createWorkerPool } from "./worker-pool.ts";

/** One reading takes one to two seconds on a core. */
const LIMITS = { threads: 1, waiting: 10, milliseconds: 60_000 };

/** Reads letters in a thread of its own, by networks that come in a package. */
export function createLettersReader(): LettersReader {
  const pool = createWorkerPool<Photographed, readonly Reading[]>("readRegion", LIMITS);
  return { read: (photograph, region) => pool.run({ photograph, region }) };
}
