import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";
import { Piscina } from "piscina";
import type { FieldError } from "#core/field-error";
import { fail, ok, type Result } from "#core/result";

/** Names of what ml/worker.mjs offers. */
type Task = "alignPair" | "readRegion";

/** Long computations in threads of their own, so that the process goes on answering meanwhile. */
export type WorkerPool<Asked, Answer> = {
  /**
   * @returns as the error, that too many wait (rule `busy`), or that it took too long (rule `too-long`)
   * @throws Error what the computation itself threw
   */
  run(asked: Asked): Promise<Result<Answer, FieldError>>;
  /** Ends the threads; work that is under way fails. */
  close(): Promise<void>;
};

export type WorkerLimits = {
  readonly threads: number;
  /** How many may wait for a thread. */
  readonly waiting: number;
  /** From asking to the answer; a computation that takes longer is ended with its thread. */
  readonly milliseconds: number;
};

/** A thread that nobody needs gives its memory back after so long. */
const IDLE = 60_000;

/**
 * Makes a pool for one kind of work. It starts no thread before it is asked, and an idle one doesn't keep the process
 * from ending.
 * @param file the module that the threads load, ml/worker.mjs when left out
 */
export function createWorkerPool<Asked, Answer>(
  task: Task,
  limits: WorkerLimits,
  file = workerFile(),
): WorkerPool<Asked, Answer> {
  const pool = new Piscina<Asked, Answer>({
    filename: file,
    name: task,
    minThreads: 0,
    maxThreads: limits.threads,
    idleTimeout: IDLE,
    // What the process was started with is not for its threads: they bring their own loader.
    execArgv: [],
    recordTiming: false,
  });
  return {
    async run(asked) {
      // Counted here: the pool's own limit wavers by a few while its threads start.
      if (pool.queueSize >= limits.waiting)
        return fail({ field: "request", rule: "busy", received: String(pool.queueSize) });
      const began = performance.now();
      const signal = AbortSignal.timeout(limits.milliseconds);
      try {
        return ok(await pool.run(asked, { signal }));
      } catch (error) {
        if (signal.aborted)
          return fail({
            field: "request",
            rule: "too-long",
            received: `${((performance.now() - began) / 1000).toFixed(1)} s`,
            params: { seconds: limits.milliseconds / 1000 },
          });
        throw error;
      }
    },
    close: () => pool.destroy(),
  };
}

/** Under the working directory first, because a bundler moves this file away from its neighbours. */
function workerFile(): string {
  const fromHere = join(/* turbopackIgnore: true */ process.cwd(), "ml", "worker.mjs");
  if (existsSync(fromHere)) return fromHere;
  return resolve(fileURLToPath(import.meta.url), "../../../ml/worker.mjs");
}
