import { type Frame, framesOf, nearestFrame } from "#core/look-ups/frames";
import type { Region } from "#core/photographs/region";
import { type Hit, NEIGHBOURS } from "#core/similarity/rank";
import type { Embedder, MarkFinder, Nearest, ReadImage } from "../ports.ts";

type Needs = { readonly marks: MarkFinder; readonly nearest: Nearest };

/** A part of an image as the model sees it. */
type DescribedFrame = Frame &
  Awaited<ReturnType<Embedder["embedQuery"]>> & {
    /** What was found by it already; null when nothing was searched for yet. */
    readonly hits: readonly Hit[] | null;
    /** How many frames it was chosen from. */
    readonly tries: number;
  };

/**
 * Describes the part of an image that shows the mark: the one that was drawn or, when nobody drew one, whichever of the
 * whole and the likeliest place finds the nearest photograph. What both cost is counted.
 * @param drawn in pixels of the image as it is kept; null when nobody framed the mark
 */
export async function describeFrame(
  { marks, nearest }: Needs,
  embedder: Embedder,
  image: ReadImage,
  drawn: Region | null,
): Promise<DescribedFrame> {
  const [first, ...others] = framesOf(image, drawn, drawn ? [] : await marks.find(image.bytes));
  const describe = async (frame: Frame) => ({
    ...frame,
    ...(await embedder.embedQuery(image.bytes, frame.region)),
  });
  if (others.length === 0) return { ...(await describe(first)), hits: null, tries: 1 };
  const search = async (frame: Frame) => {
    const described = await describe(frame);
    return { ...described, hits: await nearest.search(embedder.model, described.vectors, NEIGHBOURS) };
  };
  const whole = await search(first);
  const rest = [];
  for (const frame of others) rest.push(await search(frame));
  const all = [whole, ...rest];
  return {
    ...nearestFrame([whole, ...rest]),
    tries: all.length,
    preprocessMs: all.reduce((sum, each) => sum + each.preprocessMs, 0),
    embedMs: all.reduce((sum, each) => sum + each.embedMs, 0),
  };
}
