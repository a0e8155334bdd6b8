import type { Evidence } from "./evidence.ts";
import { type HardWindow, hardReading, spanOf } from "./hard-reading.ts";

/** A day, and the pieces that set it. */
type HardBound = { readonly day: string; readonly evidenceIds: readonly string[] };

export type HardBounds = { readonly notBefore: HardBound | null; readonly notAfter: HardBound | null };

type Read = { readonly id: string; readonly windows: readonly HardWindow[] };

/**
 * Not before and not after, every piece taken at its word: the first and last day that all of them allow. Null where
 * they set none, and both null where they contradict each other: no day is left then.
 */
export function hardBounds(evidence: readonly Evidence[]): HardBounds {
  const read = evidence
    .filter(({ reliability }) => reliability > 0)
    .map((piece) => ({ id: piece.id, windows: hardReading(piece) }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  return { notBefore: outermost(read, "first"), notAfter: outermost(read, "last") };
}

function allows({ windows }: Read, day: number): boolean {
  return windows.map(spanOf).some(({ from, to }) => from <= day && day <= to);
}

function outermost(read: readonly Read[], end: "first" | "last"): HardBound | null {
  const outwards = end === "first" ? -1 : 1;
  if (read.every((piece) => allows(piece, outwards * Number.POSITIVE_INFINITY))) return null;
  const order = (window: HardWindow) => (end === "first" ? spanOf(window).from : spanOf(window).to);
  const bound = read
    .flatMap(({ windows }) => windows)
    .filter((window) => window[end] !== null && read.every((piece) => allows(piece, order(window))))
    .sort((a, b) => -outwards * (order(a) - order(b)))[0];
  const day = bound?.[end];
  if (!bound || !day) return null;
  const beyond = order(bound) + outwards / 2;
  return { day, evidenceIds: read.filter((piece) => !allows(piece, beyond)).map(({ id }) => id) };
}
