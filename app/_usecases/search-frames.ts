import type { FramedBy } from "#core/look-ups/look-up";
import { framed } from "#core/photographs/proposal";
import { type Region, wholeOf } from "#core/photographs/region";
import type { Hit } from "#core/similarity/rank";
import type { Embedder, MarkFinder, Nearest, QueryVector, ReadImage } from "./ports.ts";

/** A part of an image that is looked up, and who chose it. */
export type Frame = { readonly region: Region; readonly framedBy: FramedBy };

export type EmbeddedFrame = Frame & {
  readonly vectors: readonly QueryVector[];
  readonly preprocessMs: number;
  readonly embedMs: number;
};

/**
 * The frames to look an image up by: the one that was drawn, or else all of the image and the place where the mark is
 * proposed to be. Together they find the right entry nearly as often as a frame drawn by hand; either alone does not
 * (scripts/uncropped.ts).
 * @param drawn in pixels of the image as it is kept
 */
export async function framesOf(
  marks: MarkFinder,
  image: ReadImage,
  drawn: Region | null,
): Promise<readonly Frame[]> {
  if (drawn) return [{ region: drawn, framedBy: "person" }];
  const whole: Frame = { region: wholeOf(image), framedBy: "nobody" };
  const [first] = await marks.find(image.bytes);
  return first ? [whole, { region: framed(first.region, image), framedBy: "proposal" }] : [whole];
}

/** The vectors of every frame. */
export async function embedFrames(
  embedder: Embedder,
  image: ReadImage,
  frames: readonly Frame[],
): Promise<readonly EmbeddedFrame[]> {
  const embedded: EmbeddedFrame[] = [];
  for (const frame of frames)
    embedded.push({ ...frame, ...(await embedder.embedQuery(image.bytes, frame.region)) });
  return embedded;
}

/**
 * Searches by every frame and keeps to the one whose nearest photograph is nearest of all: an answer, its turns and
 * what is laid over it belong to one frame.
 */
export async function searchFrames(
  nearest: Nearest,
  model: string,
  frames: readonly EmbeddedFrame[],
  limit: number,
): Promise<{ readonly frame: EmbeddedFrame; readonly hits: readonly Hit[] }> {
  const searched = await Promise.all(
    frames.map(async (frame) => ({ frame, hits: await nearest.search(model, frame.vectors, limit) })),
  );
  const closeness = (hits: readonly Hit[]) => Math.max(...hits.map(({ similarity }) => similarity));
  return searched.reduce((best, each) => (closeness(each.hits) > closeness(best.hits) ? each : best));
}
