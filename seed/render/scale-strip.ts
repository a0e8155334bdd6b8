import sharp from "sharp";
import { lettersOf } from "../designs/typeface.ts";
import { emptyField, type Field } from "./field.ts";
import type { Random } from "./random.ts";
import { makeSurface, type Surface, tint } from "./surface.ts";

export interface Strip {
  surface: Surface;
  cover: Field;
}

/** A strip of card with millimetres on it, lying along a line below or beside the mark. */
export async function layScale(
  width: number,
  height: number,
  density: number,
  x: number,
  y: number,
  turn: number,
  length: number,
  random: Random,
): Promise<Strip> {
  const tall = Math.max(2.4, Math.min(9, length * 0.16));
  const black = random.chance(0.35);
  const [paper, ink] = black ? ["#161616", "#f2f2ee"] : ["#f4f2ea", "#141414"];
  const step = length > 34 ? 1 : length > 14 ? 1 : 0.5;
  let ticks = "";
  const total = Math.floor(length) - 1;
  for (let n = 0; n * step <= total; n++) {
    const mm = n * step;
    const whole = Math.abs(mm - Math.round(mm)) < 1e-6;
    const long =
      whole && Math.round(mm) % 10 === 0
        ? 0.6
        : whole && Math.round(mm) % 5 === 0
          ? 0.46
          : whole
            ? 0.3
            : 0.18;
    ticks += `<path d="M${(mm - 0.055).toFixed(3)} 0h.11v${(tall * long).toFixed(3)}h-.11Z"/>`;
    const every = length > 34 ? 10 : length > 14 ? 5 : 1;
    if (whole && Math.round(mm) % every === 0) {
      const size = tall * 0.24;
      const letters = lettersOf(String(Math.round(mm)), "oswald");
      let at = mm + 0.12 + size * 0.1;
      for (const letter of letters) {
        ticks += `<path transform="translate(${at.toFixed(3)} ${(tall * 0.93).toFixed(3)}) scale(${size.toFixed(3)})" d="${letter.outline}"/>`;
        at += letter.advance * size;
      }
    }
  }
  const place = `translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(2)}) scale(${density.toFixed(3)}) translate(${(-length / 2).toFixed(2)} 0)`;
  const draw = (inner: string): Buffer =>
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><g transform="${place}">${inner}</g></svg>`,
    );
  const edge = `<rect x="-.6" y="-.05" width="${(length + 0.2).toFixed(2)}" height="${(tall * 1.05).toFixed(2)}" fill="#fff"/>`;
  const coverBytes = await sharp(draw(edge))
    .flatten({ background: "#000" })
    .extractChannel(0)
    .raw()
    .toBuffer();
  const printed = await sharp(draw(`${edge.replace("#fff", paper ?? "#fff")}<g fill="${ink}">${ticks}</g>`))
    .flatten({ background: paper ?? "#fff" })
    .extractChannel(0)
    .raw()
    .toBuffer();
  const surface = makeSurface(width, height, density);
  const cover = emptyField(width, height);
  for (let k = 0; k < cover.data.length; k++) {
    cover.data[k] = (coverBytes[k] ?? 0) / 255;
    const v = ((printed[k] ?? 0) / 255) ** 2.2 * 0.9 + 0.02;
    tint(surface, k, [v, v * 0.985, v * 0.95], 1);
    surface.rough[k] = 0.9;
    surface.coat[k] = 0.25;
    surface.coatRough[k] = 0.4;
  }
  return { surface, cover };
}
