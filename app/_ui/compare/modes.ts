/**
 * How two photographs are laid: beside each other, one wiped over the other, one after the other in turns, or one
 * over the other so that the points that agree lie on each other.
 */
export const MODES = ["side", "wipe", "blink", "laid"] as const;
export type Mode = (typeof MODES)[number];
