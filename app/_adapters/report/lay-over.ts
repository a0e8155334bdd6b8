import sharp from "sharp";
import type { ReportBlock } from "#core/object-files/report/blocks";

export type Laid = Extract<ReportBlock<string>, { readonly is: "laid" }>;
type Pixels = { readonly data: Buffer; readonly width: number; readonly height: number };

/** Pixels of the picture's longer side, and how many squares of each photograph alternate on it. */
const SIDE = 720;
const SQUARES = 6;

/**
 * The reference's region with squares of the mark on the object between squares of its own: where both are one mark,
 * its lines go on from square to square, in print without colours too.
 */
export async function layOver(block: Laid, own: Uint8Array, reference: Uint8Array): Promise<Buffer> {
  const [on, of] = await Promise.all([greyOf(own, block.own), greyOf(reference, block.reference)]);
  const { region } = block.reference;
  const back = inverse(block.homography);
  if (!back) throw new Error("homography: must have an inverse.");
  const step = Math.max(region.width, region.height) / SIDE;
  const [width, height] = [Math.round(region.width / step), Math.round(region.height / step)];
  const square = Math.max(width, height) / SQUARES;
  const turn = (-region.turn * Math.PI) / 180;
  const data = Buffer.alloc(width * height);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const [right, down] = [(column + 0.5 - width / 2) * step, (row + 0.5 - height / 2) * step];
      const x = region.x + region.width / 2 + right * Math.cos(turn) - down * Math.sin(turn);
      const y = region.y + region.height / 2 + right * Math.sin(turn) + down * Math.cos(turn);
      const isOwn = (Math.floor(column / square) + Math.floor(row / square)) % 2 === 0;
      const seen = isOwn ? at(on, ...moved(back, x, y)) : null;
      data[row * width + column] = seen ?? at(of, x, y) ?? 255;
    }
  return sharp(data, { raw: { width, height, channels: 1 } })
    .jpeg({ quality: 86 })
    .toBuffer();
}

/** Grey, in the pixels in which the report speaks of it. */
async function greyOf(bytes: Uint8Array, { width, height }: Laid["own"]): Promise<Pixels> {
  const data = await sharp(bytes)
    .resize(width, height, { fit: "fill" })
    .flatten({ background: "#ffffff" })
    .greyscale()
    .normalise()
    .raw()
    .toBuffer();
  return { data, width, height };
}

/** Between four pixels; null outside. */
function at({ data, width, height }: Pixels, x: number, y: number): number | null {
  const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  if (!(left >= 0 && top >= 0 && left + 1 < width && top + 1 < height)) return null;
  const [across, down] = [x - 0.5 - left, y - 0.5 - top];
  const pixel = (i: number) => data[i] ?? 0;
  const i = top * width + left;
  const upper = pixel(i) * (1 - across) + pixel(i + 1) * across;
  const lower = pixel(i + width) * (1 - across) + pixel(i + width + 1) * across;
  return Math.round(upper * (1 - down) + lower * down);
}

function moved(h: readonly number[], x: number, y: number): readonly [number, number] {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, j = 1] = h;
  const w = g * x + i * y + j;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** Nine numbers, row by row, that undo nine others; null when nothing does. */
function inverse(h: readonly number[]): readonly number[] | null {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, j = 0] = h;
  const all = a * (e * j - f * i) - b * (d * j - f * g) + c * (d * i - e * g);
  if (!Number.isFinite(all) || all === 0) return null;
  return [
    ...[e * j - f * i, c * i - b * j, b * f - c * e],
    ...[f * g - d * j, a * j - c * g, c * d - a * f],
    ...[d * i - e * g, b * g - a * i, a * e - b * d],
  ].map((each) => each / all);
}
