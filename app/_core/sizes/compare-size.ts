/** Millimetres. */
export type Size = { readonly width: number; readonly height: number };
/** What somebody measured; either side may be missing. */
export type MeasuredSize = { readonly width: number | null; readonly height: number | null };

/**
 * How far a measured size may be from a catalogued one: the larger of the two.
 * A share, because clay shrinks by a tenth or so in drying and firing and cloth in washing; at least a millimetre,
 * because a worn edge and a ruler allow no better. Both from memory, common practice; no source is claimed.
 */
const SIZE_TOLERANCE = { share: 0.12, millimetres: 1 } as const;

/**
 * Does a measured size fit a catalogued one, upright or lying? With one side measured, that side is compared.
 * @returns null when nothing was measured
 */
export function fitsSize(measured: MeasuredSize, catalogued: Size): boolean | null {
  const { width, height } = measured;
  if (width === null && height === null) return null;
  const fits = (sides: Size) => near(width, sides.width) && near(height, sides.height);
  const lying = { width: catalogued.height, height: catalogued.width };
  // Which way a mark is upright is often unknown; with one side alone that would make any size fit.
  return fits(catalogued) || (width !== null && height !== null && fits(lying));
}

function near(measured: number | null, catalogued: number): boolean {
  if (measured === null) return true;
  const allowed = Math.max(SIZE_TOLERANCE.millimetres, SIZE_TOLERANCE.share * catalogued);
  // A hair's breadth for numbers that a computer can't hold exactly.
  return Math.abs(measured - catalogued) <= allowed + 1e-9;
}
