import { framed, type Proposal } from "../photographs/proposal.ts";
import { type Region, wholeOf } from "../photographs/region.ts";
import type { Hit } from "../similarity/rank.ts";
import type { FramedBy } from "./asked-photographs.ts";

/** A part of an image that is looked up, and who chose it. */
export type Frame = { readonly region: Region; readonly framedBy: FramedBy };

/**
 * The frames to look an image up by: the one that was drawn, or else all of the image and the place where the mark is
 * likeliest to be. Together they find the right entry as often as a frame drawn by hand; either alone does not
 * (scripts/uncropped.ts).
 * @param drawn in pixels of the image, as the proposals are
 * @param proposals best first; not looked at when a frame was drawn
 */
export function framesOf(
  image: { readonly width: number; readonly height: number },
  drawn: Region | null,
  proposals: readonly Proposal[],
): readonly [Frame, ...Frame[]] {
  if (drawn) return [{ region: drawn, framedBy: "person" }];
  const whole: Frame = { region: wholeOf(image), framedBy: "nobody" };
  const [first] = proposals;
  return first ? [whole, { region: framed(first.region, image), framedBy: "proposal" }] : [whole];
}

/**
 * Of several frames, the one whose nearest photograph is nearest of all; of equals, the first. An answer, its turns
 * and what is laid over it belong to one frame.
 */
export function nearestFrame<T extends { readonly hits: readonly Hit[] }>(
  searched: readonly [T, ...(readonly T[])],
): T {
  const closeness = ({ hits }: T) => Math.max(...hits.map(({ similarity }) => similarity));
  return searched.reduce((best, each) => (closeness(each) > closeness(best) ? each : best));
}
