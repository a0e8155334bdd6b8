import type { MeasuredSize } from "#core/sizes/compare-size";

/** A size in words for a message: which of its sides are known, and how long they are. */
export function sizeWords({ width, height }: MeasuredSize, number: (value: number) => string) {
  const sides = width === null ? "height" : height === null ? "width" : "both";
  return {
    sides,
    width: width === null ? "" : number(width),
    height: height === null ? "" : number(height),
  };
}
