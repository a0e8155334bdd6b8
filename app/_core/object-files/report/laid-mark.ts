import { withMargin } from "../../photographs/region.ts";
import { spreadPoints } from "../../photographs/spread-points.ts";
import type { FilePhotograph, MarkFound } from "../object-file.ts";
import type { Phrase, ReportBlock } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { caption } from "./photographs.ts";
import { msg, row } from "./phrases.ts";

/** Places that are numbered on both photographs: as many as an eye can follow. */
const PLACES = 9;

/** A mark beside its reference, with places that are the same on both, and laid over it; null where it could not be. */
export function laidBlock(
  { id, match }: MarkFound,
  photographs: readonly FilePhotograph[],
  { references }: ReportParts,
): Extract<ReportBlock<Phrase>, { readonly is: "laid" }> | null {
  const { photograph: reference, laid } = references[id] ?? {};
  const own = photographs.find(({ sha256 }) => sha256 === laid?.own);
  if (!match || !reference || !laid || !own) return null;
  const { homography, points, inliers, plausible } = laid.alignment;
  if (!plausible || homography === null) return null;
  const places = spreadPoints(points, PLACES);
  const { title } = match;
  return {
    is: "laid",
    homography,
    own: {
      ...{ sha256: own.sha256, width: own.width, height: own.height, from: "file" },
      region: withMargin(laid.region, own),
      places: places.map(({ query }) => query),
      alt: msg("laid.ownAlt", { title, count: places.length }),
      caption: row([msg("laid.own"), caption(own.shows, own.credit)]),
    },
    reference: {
      ...{ sha256: reference.sha256, width: reference.width, height: reference.height, from: "reference" },
      region: withMargin(reference.region, reference),
      places: places.map((place) => place.reference),
      alt: msg("laid.referenceAlt", { title, count: places.length }),
      caption: row([msg("reference", { title }), caption(reference.shows, reference.credit)]),
    },
    over: {
      alt: msg("laid.overAlt", { title, count: inliers }),
      caption: msg("laid.over", { count: inliers, places: places.length }),
    },
  };
}
