import { type Frame, framesOf, nearestFrame } from "#core/look-ups/frames";
import type { Region } from "#core/photographs/region";
import { NEIGHBOURS } from "#core/similarity/rank";
import type { Embedder, MarkFinder, Nearest, ReadImage } from "../ports.ts";

type Needs = { readonly marks: MarkFinder; readonly nearest: Nearest };

/** A part of an image as the model sees it. */
type DescribedFrame = Frame & Awaited<ReturnType<Embedder["embedQuery"]>>;

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
  const describe = async (frame: Frame): Promise<DescribedFrame> => ({
    ...frame,
    ...(await embedder.embedQuery(image.bytes, frame.region)),
  });
  const described = await describe(first);
  if (others.length === 0) return described;
  const search = async (frame: DescribedFrame) => ({
    ...frame,
    hits: await nearest.search(embedder.model, frame.vectors, NEIGHBOURS),
  });
  const rest = [];
  for (const frame of others) rest.push(await search(await describe(frame)));
  const chosen = nearestFrame([await search(described), ...rest]);
  const all = [described, ...rest];
  return {
    ...chosen,
    preprocessMs: all.reduce((sum, each) => sum + each.preprocessMs, 0),
    embedMs: all.reduce((sum, each) => sum + each.embedMs, 0),
  };
}
