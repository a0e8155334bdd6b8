/** Cosine of the angle between two vectors of the same length. */
export function cosine(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const dot = (x: ArrayLike<number>, y: ArrayLike<number>) =>
    Array.from(x, (v, i) => v * (y[i] ?? Number.NaN)).reduce((s, v) => s + v, 0);
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
}

/** Mean of the absolute differences, NaN when the lengths differ. */
export function meanDifference(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const length = Math.max(a.length, b.length);
  return (
    Array.from({ length }, (_, i) => Math.abs((a[i] ?? Number.NaN) - (b[i] ?? Number.NaN))).reduce(
      (x, y) => x + y,
    ) / length
  );
}
