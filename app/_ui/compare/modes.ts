/** How two photographs are laid: beside each other, one wiped over the other, or one after the other in turns. */
export const MODES = ["side", "wipe", "blink"] as const;
export type Mode = (typeof MODES)[number];
