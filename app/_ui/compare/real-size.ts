import type { Photograph } from "#core/photographs/photograph";
import type { Region } from "#core/photographs/region";

/**
 * By how much a reference photograph is enlarged so that a millimetre on it is as long as one on the query, when
 * both regions fill the same square.
 * @param millimetres what the query's region measures across on the object
 * @returns null while either scale is not known
 */
export function realSizeRatio(query: Region, photograph: Photograph, millimetres: number): number | null {
  const reference = longerSideMm(photograph);
  if (reference === null || !(millimetres > 0)) return null;
  const queryAcross = (Math.max(query.width, query.height) / query.width) * millimetres;
  return reference / queryAcross;
}

/** Beyond this many times larger or smaller, two photographs do not show the same mark, or a figure is mistyped. */
const PLAUSIBLE = 5;

/**
 * Between which millimetres across the query's region may plausibly measure, next to a photograph of known scale.
 * @returns null while the photograph's scale is not known
 */
export function plausibleMm(query: Region, photograph: Photograph): { min: number; max: number } | null {
  const reference = longerSideMm(photograph);
  if (reference === null) return null;
  const across = (reference * query.width) / Math.max(query.width, query.height);
  const tenth = (value: number) => Math.max(0.1, Math.round(value * 10) / 10);
  return { min: tenth(across / PLAUSIBLE), max: tenth(across * PLAUSIBLE) };
}

/** Millimetres along the longer side of a photograph's region. */
function longerSideMm({ region, pixelsPerMm }: Photograph): number | null {
  return pixelsPerMm === null ? null : Math.max(region.width, region.height) / pixelsPerMm;
}
