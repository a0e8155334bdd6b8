import { setTimeout as wait } from "node:timers/promises";
import { type Reembedded, type ReembedOptions, reembed } from "#usecases/reembed";
import type { Live } from "./live.ts";

type Wanted = Pick<ReembedOptions, "leaveOut" | "onProgress">;
type Listener = NonNullable<ReembedOptions["onProgress"]>;

/** Re-embedding in this process: one run at a time, the next waits. */
type Filling = { last: Promise<unknown>; readonly stop: AbortController; readonly listeners: Set<Listener> };

// Kept on the global object: a bundler may give each route its own copy of this module.
const held = globalThis as typeof globalThis & { countermarkFilling?: Filling };

/** Milliseconds that a photograph waits for look-ups at most, so that a busy host gets on too. */
const LONGEST_WAIT = 2_000;
const LOOK_AGAIN = 20;

/** Embeds what lacks vectors of the model in place, one run at a time; who comes later follows the progress. */
export async function fillModels(wired: Live, wanted: Wanted = {}): Promise<Reembedded> {
  held.countermarkFilling ??= {
    last: Promise.resolve(),
    stop: new AbortController(),
    listeners: new Set(),
  };
  const { last, stop, listeners } = held.countermarkFilling;
  const { leaveOut = false, onProgress = () => undefined } = wanted;
  listeners.add(onProgress);
  const run = last.then(() =>
    reembed(wired, {
      leaveOut,
      signal: stop.signal,
      pause: () => lookUpsFirst(wired),
      onProgress: (progress) => {
        for (const listener of listeners) listener(progress);
      },
    }),
  );
  held.countermarkFilling.last = run.catch(() => undefined);
  return run.finally(() => listeners.delete(onProgress));
}

/** Stops re-embedding for good; returns when nothing of it touches the database any more. */
export async function stopFilling(): Promise<void> {
  held.countermarkFilling?.stop.abort();
  await held.countermarkFilling?.last;
}

async function lookUpsFirst({ queue }: Live): Promise<void> {
  const giveUp = performance.now() + LONGEST_WAIT;
  while (!queue.isIdle && performance.now() < giveUp) await wait(LOOK_AGAIN);
}
