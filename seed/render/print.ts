import { blur, clamp01, type Field, moved, noise, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import { type Colour, type Surface, tint } from "./surface.ts";

export interface PrintWish {
  /** One mask for each ink, from the first. */
  masks: readonly Float32Array[];
  inks: readonly Colour[];
  /** How far the colours are out of register, in millimetres. */
  register: number;
  /** How unevenly the ink lies: 0 even, 1 blotchy. */
  uneven: number;
  /** Share of ink lost. */
  lost: number;
  /** Bleeding of ink into the ground, in millimetres. */
  bleed: number;
  /** Size of the screen of a halftone in millimetres; none where absent. */
  screen?: number;
}

/** Lays inks on a surface; returns how much ink lies at each pixel. */
export function print(surface: Surface, wish: PrintWish, random: Random): Field {
  const { width, height, density } = surface;
  const total: Field = { width, height, data: new Float32Array(width * height) };
  const blotch = noise(width, height, Math.max(2, density * 1.1), 4, random);
  const loss = noise(width, height, Math.max(2, density * 0.7), 5, random);
  const region = noise(width, height, density * 9, 2, random);
  wish.masks.forEach((mask, n) => {
    const ink = wish.inks[n];
    if (!ink)
      throw new Error(
        `inks: must name a colour for each ink of the design. Received ${wish.inks.length} for ${wish.masks.length}.`,
      );
    const placed = blur(
      moved(
        { width, height, data: mask },
        random.normal() * wish.register * density,
        random.normal() * wish.register * density,
      ),
      Math.max(0.5, wish.bleed * density),
    );
    const p = (wish.screen ?? 0) * density;
    for (let k = 0; k < mask.length; k++) {
      let cover = placed.data[k] ?? 0;
      if (cover < 0.004) continue;
      cover *= 1 - wish.uneven * clamp01(0.3 + (blotch.data[k] ?? 0) * 0.5);
      cover *=
        1 -
        smoothstep(
          1.25 - wish.lost * 2,
          1.5 - wish.lost * 1.6,
          (loss.data[k] ?? 0) + (region.data[k] ?? 0) * 0.5,
        );
      if (p > 1.5) {
        const x = k % width;
        const y = Math.floor(k / width);
        const dot = Math.sin(((x + y) / p) * 4.4) * Math.sin(((x - y) / p) * 4.4) * 0.5 + 0.5;
        cover *= 0.8 + 0.2 * dot;
      }
      tint(surface, k, ink, clamp01(cover));
      total.data[k] = Math.max(total.data[k] ?? 0, cover);
    }
  });
  return total;
}
