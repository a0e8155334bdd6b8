import sharp from "sharp";
import type { Region } from "./preprocess.ts";

/** A photograph's region, grey and upright, at a size at which local features are worth finding. */
export type CloseUp = {
  /** Row by row, 0 to 255: width x height numbers. */
  readonly grey: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** Where the close-up's corner lies in the photograph, and how many of its pixels one of the photograph's is. */
  readonly left: number;
  readonly top: number;
  readonly scaleX: number;
  readonly scaleY: number;
};

/** Small regions are enlarged so far at most: more shows no more. */
const LARGEST_SCALE = 3;

/**
 * Cuts the upright box around a region, whatever the region's own turn, out of a photograph.
 * @param photograph an encoded image in any format sharp reads, or the path of one
 * @param region in pixels of the upright photograph; without one, the whole photograph
 * @param side pixels that the longer side is reduced or enlarged to
 * @throws Error when the photograph cannot be decoded or the region lies outside it
 */
export async function closeUp(
  photograph: Uint8Array | string,
  region: Region | null,
  side: number,
): Promise<CloseUp> {
  const image = sharp(photograph, { failOn: "truncated" }).autoOrient();
  const { autoOrient: whole } = await image.metadata();
  const box = region ? boxAround(region) : { left: 0, top: 0, right: whole.width, bottom: whole.height };
  const left = Math.max(0, Math.floor(box.left));
  const top = Math.max(0, Math.floor(box.top));
  const across = Math.min(whole.width, Math.ceil(box.right)) - left;
  const down = Math.min(whole.height, Math.ceil(box.bottom)) - top;
  if (!(across > 0 && down > 0))
    throw new Error(
      `region: must lie inside the photograph (${whole.width} x ${whole.height}). ` +
        `Received ${JSON.stringify(region)}.`,
    );
  const scale = Math.min(LARGEST_SCALE, side / Math.max(across, down));
  const width = Math.max(1, Math.round(across * scale));
  const height = Math.max(1, Math.round(down * scale));
  const { data, info } = await image
    .flatten({ background: "#ffffff" })
    .extract({ left, top, width: across, height: down })
    .resize(width, height, { fit: "fill", kernel: scale > 1 ? "cubic" : "lanczos3" })
    .toColourspace("b-w")
    .raw()
    .toBuffer({ resolveWithObject: true });
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = data[i * info.channels] ?? 0;
  return { grey, width, height, left, top, scaleX: width / across, scaleY: height / down };
}

/** The upright box around a box turned about its centre. */
function boxAround({ x, y, width, height, turn }: Region) {
  const cos = Math.abs(Math.cos((turn * Math.PI) / 180));
  const sin = Math.abs(Math.sin((turn * Math.PI) / 180));
  const halfWidth = (width * cos + height * sin) / 2;
  const halfHeight = (width * sin + height * cos) / 2;
  const centreX = x + width / 2;
  const centreY = y + height / 2;
  return {
    left: centreX - halfWidth,
    top: centreY - halfHeight,
    right: centreX + halfWidth,
    bottom: centreY + halfHeight,
  };
}
