import sharp from "sharp";
import type { Design } from "./design.ts";

/** Where a mark lies on a surface of pixels. */
export interface Placement {
  width: number;
  height: number;
  /** Middle of the mark in pixels. */
  x: number;
  y: number;
  pixelsPerMillimetre: number;
  /** Degrees clockwise from upright. */
  turn: number;
}

/** 0 to 1 for each pixel of the surface. */
export type Mask = Float32Array;

function wrap(inner: string, at: Placement): Buffer {
  const s = at.pixelsPerMillimetre.toFixed(4);
  return Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${at.width}" height="${at.height}"><g transform="translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) rotate(${at.turn.toFixed(2)}) scale(${s})">${inner}</g></svg>`,
  );
}

const paint = (drawing: string, figure: string, ground: string): string =>
  drawing.replaceAll('"F"', `"${figure}"`).replaceAll('"G"', `"${ground}"`);

async function rasterise(svg: Buffer, channels: 1 | 4): Promise<Buffer> {
  const image = sharp(svg).ensureAlpha();
  return channels === 4
    ? image.raw().toBuffer()
    : image.flatten({ background: "#000" }).extractChannel(0).raw().toBuffer();
}

function toMask(bytes: Buffer): Mask {
  const mask = new Float32Array(bytes.length);
  for (let i = 0; i < bytes.length; i++) mask[i] = (bytes[i] ?? 0) / 255;
  return mask;
}

/** The ground of the mark as a mask; all zero where it has none. */
export async function fieldMask(design: Design, at: Placement): Promise<Mask> {
  if (!design.field) return new Float32Array(at.width * at.height);
  return toMask(await rasterise(wrap(paint(design.field, "#fff", "#000"), at), 1));
}

/** What stands on the ground as a mask, whatever its ink. */
export async function deviceMask(design: Design, at: Placement): Promise<Mask> {
  const inner = design.device.map((piece) => paint(piece.drawing, "#fff", "#000")).join("");
  return toMask(await rasterise(wrap(inner, at), 1));
}

/** One mask for each ink from 1 on; a later piece covers an earlier one. */
export async function inkMasks(design: Design, at: Placement): Promise<Mask[]> {
  const count = Math.max(...design.device.map((piece) => piece.ink));
  const masks: Mask[] = [];
  for (let ink = 1; ink <= count; ink++) {
    const inner = design.device
      .map((piece) => paint(piece.drawing, piece.ink === ink ? "#fff" : "#000", "#000"))
      .join("");
    masks.push(toMask(await rasterise(wrap(inner, at), 1)));
  }
  return masks;
}
