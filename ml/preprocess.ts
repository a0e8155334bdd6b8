import sharp from "sharp";
import { type Grey, resize, sample } from "./square.ts";

/**
 * The region of interest of a photograph: the box that holds the mark, in pixels of the upright photograph,
 * and the degrees clockwise by which the photograph is turned about the box's centre before the box is cut.
 */
export type Region = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
};

/** The part of a photograph that a region reaches in any direction, grey, reduced where it is needlessly fine. */
export type Patch = {
  readonly grey: Grey;
  /** From photograph pixels to patch pixels: x * scaleX - left, y * scaleY - top. */
  readonly scaleX: number;
  readonly scaleY: number;
  readonly left: number;
  readonly top: number;
  /** The smallest square that contains the box, in photograph pixels. */
  readonly square: { readonly centreX: number; readonly centreY: number; readonly side: number };
  readonly turn: number;
};

const SIDE = 160;
/** Keeps a picture without contrast from becoming noise. */
export const SOFTENING = 0.02;
/** A region wider than this many times the wanted side is reduced while it is decoded. */
const OVERSAMPLING = 3;
/** Room for the filters, in patch pixels. */
const MARGIN = 3;

/**
 * Decodes what a region of a photograph needs, and no more: turned upright after its EXIF orientation, over
 * white where it is transparent, reduced while decoding (a JPEG by its own coarser scales) but never below
 * three times the resolution the network sees, grey by Rec. 601 on the sRGB values.
 * @param photograph an encoded image in any format sharp reads, or the path of one
 * @param region in pixels of the upright photograph; without one, the whole photograph
 * @throws Error when the photograph cannot be decoded or the region is not a box with its centre inside it
 */
export async function decode(photograph: Uint8Array | string, region?: Region): Promise<Patch> {
  const image = sharp(photograph, { failOn: "truncated" }).autoOrient();
  const { autoOrient: whole } = await image.metadata();
  const box = region ?? { x: 0, y: 0, width: whole.width, height: whole.height, turn: 0 };
  const square = squareOf(box, whole);
  const scale = Math.min(1, (OVERSAMPLING * SIDE) / square.side);
  const width = Math.max(1, Math.round(whole.width * scale));
  const height = Math.max(1, Math.round(whole.height * scale));
  const scaleX = width / whole.width;
  const scaleY = height / whole.height;
  const reach = square.side * Math.SQRT1_2;
  const across = span(square.centreX * scaleX, reach * scaleX, width);
  const down = span(square.centreY * scaleY, reach * scaleY, height);
  const { data, info } = await image
    .flatten({ background: "#ffffff" })
    .toColourspace("srgb")
    .resize(width, height, { fit: "fill", kernel: "lanczos3" })
    .extract({ left: across.from, top: down.from, width: across.length, height: down.length })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const grey = { values: luma(data, info.channels), width: info.width, height: info.height };
  return { grey, scaleX, scaleY, left: across.from, top: down.from, square, turn: box.turn };
}

/**
 * What the network sees of a patch: the square, resized with an antialiased triangle filter and standardised.
 * The definition, and the arrays this is tested against, are the trainer's: ml/train/preprocess.py.
 * @param turn degrees clockwise by which the photograph is turned, besides the region's own turn
 * @param side pixels of a side
 * @returns side * side numbers, row by row, of mean 0 and about unit deviation
 */
export function prepare(patch: Patch, turn = 0, side = SIDE): Float32Array {
  return standardise(cut(patch, turn, side));
}

/** The square before it is standardised: side * side grey values, 0 to 1. */
export function cut(patch: Patch, turn: number, side: number): Float32Array {
  const { grey, scaleX, scaleY, square } = patch;
  const degrees = patch.turn + turn;
  const half = square.side / 2;
  if (degrees % 360 === 0) {
    // Cut at whole pixels of the photograph, as an editor would.
    const left = Math.floor(square.centreX - half + 0.5) * scaleX - patch.left;
    const top = Math.floor(square.centreY - half + 0.5) * scaleY - patch.top;
    return resize(grey, { left, top, width: square.side * scaleX, height: square.side * scaleY }, side);
  }
  const points = Math.max(1, Math.round(square.side * Math.max(scaleX, scaleY)));
  const step = square.side / points;
  const cos = Math.cos((degrees * Math.PI) / 180) * step;
  const sin = Math.sin((degrees * Math.PI) / 180) * step;
  const axes = {
    centreX: square.centreX * scaleX - patch.left,
    centreY: square.centreY * scaleY - patch.top,
    rightX: cos * scaleX,
    rightY: -sin * scaleY,
    downX: sin * scaleX,
    downY: cos * scaleY,
  };
  return resize(sample(grey, axes, points), { left: 0, top: 0, width: points, height: points }, side);
}

function squareOf(box: Region, whole: { width: number; height: number }) {
  const square = {
    centreX: box.x + box.width / 2,
    centreY: box.y + box.height / 2,
    side: Math.max(1, Math.floor(Math.max(box.width, box.height) + 0.5)),
  };
  const inside =
    square.centreX >= 0 &&
    square.centreY >= 0 &&
    square.centreX <= whole.width &&
    square.centreY <= whole.height;
  const proper = box.width > 0 && box.height > 0 && Number.isFinite(square.side) && Number.isFinite(box.turn);
  if (!inside || !proper)
    throw new Error(
      `region: must be a box with its centre inside the photograph (${whole.width} x ${whole.height}). ` +
        `Received ${JSON.stringify(box)}.`,
    );
  return square;
}

function span(centre: number, reach: number, size: number) {
  const from = Math.min(size - 1, Math.max(0, Math.floor(centre - reach) - MARGIN));
  const to = Math.max(from + 1, Math.min(size, Math.ceil(centre + reach) + MARGIN));
  return { from, length: to - from };
}

function luma(data: Uint8Array, channels: number): Float32Array {
  const out = new Float32Array(data.length / channels);
  for (let i = 0, at = 0; i < out.length; i++, at += channels) {
    const red = data[at] ?? 0;
    out[i] =
      channels < 3
        ? red / 255
        : (0.299 * red + 0.587 * (data[at + 1] ?? 0) + 0.114 * (data[at + 2] ?? 0)) / 255;
  }
  return out;
}

function standardise(values: Float32Array): Float32Array {
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / values.length;
  let squares = 0;
  for (const value of values) squares += (value - mean) ** 2;
  const scale = 1 / (Math.sqrt(squares / values.length) + SOFTENING);
  return values.map((value) => (value - mean) * scale);
}
