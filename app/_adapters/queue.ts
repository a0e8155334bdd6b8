import pLimit from "p-limit";

/** Runs a few pieces of work at a time; the rest wait in order, up to a limit. */
export type Queue = {
  /** How many wait. */
  readonly waiting: number;
  readonly isFull: boolean;
  /** Nothing runs and nothing waits. */
  readonly isIdle: boolean;
  run<T>(work: () => Promise<T>): Promise<T>;
};

export function createQueue(atOnce: number, longest: number): Queue {
  const limit = pLimit(atOnce);
  return {
    get waiting() {
      return limit.pendingCount;
    },
    get isFull() {
      return limit.pendingCount >= longest;
    },
    get isIdle() {
      return limit.activeCount + limit.pendingCount === 0;
    },
    run: (work) => limit(work),
  };
}
