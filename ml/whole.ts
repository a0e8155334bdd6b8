import { cut, type Patch, SOFTENING } from "./preprocess.ts";

/** How a whole photograph lies in the square that the network sees: its part of the square's sides. */
export type Letterbox = { readonly across: number; readonly down: number };

/** The photograph's longer side fills the square; the rest is left free on both sides of the shorter one. */
export function letterboxOf({ square, grey, scaleX, scaleY }: Patch): Letterbox {
  return { across: grey.width / scaleX / square.side, down: grey.height / scaleY / square.side };
}

/**
 * What the network that finds marks sees of a whole photograph: it fits into the square, grey, resized with an
 * antialiased triangle filter, standardised over itself, and 0 beside it. A pixel belongs to the photograph when its
 * centre does. The definition, and the arrays this is tested against, are the trainer's: ml/train/letterbox.py.
 * @param patch a photograph decoded without a region
 * @returns side * side numbers, row by row
 */
export function prepareWhole(patch: Patch, side: number): Float32Array {
  const picture = cut(patch, 0, side);
  const { across, down } = letterboxOf(patch);
  const isInside = (at: number, part: number) => Math.abs((2 * (at + 0.5)) / side - 1) < part;
  const inside = picture.map((_, i) =>
    isInside(i % side, across) && isInside(Math.floor(i / side), down) ? 1 : 0,
  );
  const count = sum(inside);
  const mean = sum(picture.map((value, i) => value * (inside[i] ?? 0))) / count;
  const squares = sum(picture.map((value, i) => (value - mean) ** 2 * (inside[i] ?? 0)));
  const scale = 1 / (Math.sqrt(squares / count) + SOFTENING);
  return picture.map((value, i) => (value - mean) * scale * (inside[i] ?? 0));
}

function sum(values: Float32Array): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
