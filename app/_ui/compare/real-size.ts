import type { Photograph } from "#core/photographs/photograph";
import type { Region } from "#core/photographs/region";

/**
 * By how much a reference photograph is enlarged so that a millimetre on it is as long as one on the query, when
 * both regions fill the same square.
 * @param millimetres what the query's region measures across on the object
 * @returns null while either scale is not known
 */
export function realSizeRatio(query: Region, photograph: Photograph, millimetres: number): number | null {
  if (photograph.pixelsPerMm === null || !(millimetres > 0)) return null;
  const queryAcross = (Math.max(query.width, query.height) / query.width) * millimetres;
  const referenceAcross =
    Math.max(photograph.region.width, photograph.region.height) / photograph.pixelsPerMm;
  return referenceAcross / queryAcross;
}
