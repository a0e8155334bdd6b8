import { emptyField, type Field } from "./field.ts";

export type Colour = readonly [number, number, number];

/** What a thing is like at every pixel, before light falls on it. Colours are linear, 0 to 1. */
export interface Surface {
  width: number;
  height: number;
  /** Pixels per millimetre on the surface. */
  density: number;
  /** Height in pixels. */
  relief: Field;
  red: Float32Array;
  green: Float32Array;
  blue: Float32Array;
  /** 1 reflects in its own colour and scatters nothing. */
  metal: Float32Array;
  /** 0 a mirror, 1 matt. */
  rough: Float32Array;
  /** Strength of a clear gloss over what lies below, and how smooth it is (0 a mirror). */
  coat: Float32Array;
  coatRough: Float32Array;
  /** How far light creeps round the edges: 0 stone, 1 fleece. */
  soft: Float32Array;
}

export function makeSurface(width: number, height: number, density: number): Surface {
  const n = width * height;
  return {
    width,
    height,
    density,
    relief: emptyField(width, height),
    red: new Float32Array(n),
    green: new Float32Array(n),
    blue: new Float32Array(n),
    metal: new Float32Array(n),
    rough: new Float32Array(n).fill(0.8),
    coat: new Float32Array(n),
    coatRough: new Float32Array(n).fill(0.15),
    soft: new Float32Array(n),
  };
}

/** sRGB hex to linear light. */
export function colour(hex: string): Colour {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex.trim());
  if (!match) throw new Error(`colour: must be written #rrggbb. Received "${hex}".`);
  const channel = (text: string | undefined): number => {
    const v = Number.parseInt(text ?? "0", 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  };
  return [channel(match[1]), channel(match[2]), channel(match[3])];
}

/** Mixes a colour into one pixel. */
export function tint(surface: Surface, i: number, [r, g, b]: Colour, amount: number): void {
  surface.red[i] = (surface.red[i] ?? 0) + (r - (surface.red[i] ?? 0)) * amount;
  surface.green[i] = (surface.green[i] ?? 0) + (g - (surface.green[i] ?? 0)) * amount;
  surface.blue[i] = (surface.blue[i] ?? 0) + (b - (surface.blue[i] ?? 0)) * amount;
}

export function paintAll(surface: Surface, [r, g, b]: Colour): void {
  surface.red.fill(r);
  surface.green.fill(g);
  surface.blue.fill(b);
}

export const mix3 = (a: Colour, b: Colour, t: number): Colour => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** Lays a thing over what is under it, `lift` pixels higher, where it covers. */
export function layOver(under: Surface, over: Surface, cover: Field, lift: number): void {
  const pairs = (["red", "green", "blue", "metal", "rough", "coat", "coatRough", "soft"] as const).map(
    (name) => [under[name], over[name]] as const,
  );
  for (let i = 0; i < cover.data.length; i++) {
    const t = cover.data[i] ?? 0;
    if (t === 0) continue;
    for (const [a, b] of pairs) a[i] = (a[i] ?? 0) + ((b[i] ?? 0) - (a[i] ?? 0)) * t;
    under.relief.data[i] =
      (under.relief.data[i] ?? 0) + ((over.relief.data[i] ?? 0) + lift - (under.relief.data[i] ?? 0)) * t;
  }
}
