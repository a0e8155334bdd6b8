/** Degrees clockwise, as one says them: which way, and how far. */
export function wayAndSize(degrees: number): {
  readonly way: "none" | "right" | "left";
  readonly size: number;
} {
  if (degrees === 0) return { way: "none", size: 0 };
  return { way: degrees > 0 ? "right" : "left", size: Math.abs(degrees) };
}
