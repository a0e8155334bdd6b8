import type { FieldError } from "../field-error.ts";

/** How often one client, and all together, may do something within an hour. */
export type Pace = { readonly each: number; readonly all: number };

export const PACES = {
  publish: { each: 10, all: 200 },
  propose: { each: 30, all: 600 },
  enter: { each: 20, all: 200 },
  join: { each: 10, all: 200 },
} as const satisfies Record<string, Pace>;
export type Paced = keyof typeof PACES;

export const PACE_MS = 60 * 60 * 1000;

/**
 * Is it too soon to do it again?
 * @param mine moments, in milliseconds, at which this client did it, oldest first
 * @param all the same of every client together
 * @returns the refusal, with the minutes to wait; null when it may be done now
 */
export function tooOften(
  what: Paced,
  mine: readonly number[],
  all: readonly number[],
  now: number,
): FieldError | null {
  const pace: Pace = PACES[what];
  const waits = [waitFor(mine, pace.each, now), waitFor(all, pace.all, now)];
  const wait = Math.max(...waits);
  if (wait <= 0) return null;
  const most = (waits[0] ?? 0) > 0 ? pace.each : pace.all;
  return {
    field: "request",
    rule: "too-often",
    received: String(recent((waits[0] ?? 0) > 0 ? mine : all, now).length),
    params: { most, minutes: Math.ceil(wait / 60_000) },
  };
}

/** Moments that still count. */
export const recent = (moments: readonly number[], now: number): readonly number[] =>
  moments.filter((moment) => moment > now - PACE_MS);

function waitFor(moments: readonly number[], most: number, now: number): number {
  const counted = recent(moments, now);
  const first = counted.at(-most);
  return first === undefined ? 0 : first + PACE_MS - now;
}
