import { mirrored, type Room } from "./environment.ts";
import { clamp01, type Field, mix, noise } from "./field.ts";
import type { Random } from "./random.ts";
import type { Strike } from "./strike.ts";
import { type Colour, mix3, type Surface, tint } from "./surface.ts";

/** Glass, seen against what lies behind it: moulded relief bends the view, etching frosts it. */
export function makeGlass(
  surface: Surface,
  glass: Colour,
  strike: Strike,
  shape: Field,
  how: "moulded" | "etched",
  room: Room,
  random: Random,
): void {
  const { width, height, density, relief } = surface;
  const flow = noise(width, height, density * 9, 2, random, 1.6);
  const behind = noise(width, height, density * 18, 2, random);
  const seeds = noise(width, height, Math.max(2, density * 0.35), 2, random);
  const dust = noise(width, height, Math.max(2.2, density * 0.22), 2, random);
  for (let k = 0; k < relief.data.length; k++)
    relief.data[k] =
      (relief.data[k] ?? 0) +
      ((shape.data[k] ?? 0) +
        (how === "moulded" ? (strike.relief.data[k] ?? 0) : (strike.relief.data[k] ?? 0) * 0.2) +
        (flow.data[k] ?? 0) * density * 0.24);
  const seen = new Float32Array(3);
  const h = relief.data;
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const gx = ((h[k + (i < width - 1 ? 1 : 0)] ?? 0) - (h[k - (i > 0 ? 1 : 0)] ?? 0)) / 2;
      const gy = ((h[k + (j < height - 1 ? width : 0)] ?? 0) - (h[k - (j > 0 ? width : 0)] ?? 0)) / 2;
      const x = clamp01(0.5 + gx * 0.42 + (behind.data[k] ?? 0) * 0.12 + (i / width - 0.5) * 0.5) * 2 - 1;
      const y = clamp01(0.5 + gy * 0.42 + (j / height - 0.5) * 0.5) * 2 - 1;
      mirrored(room, x * 0.9, y * 0.9, 0.42, seen);
      const deep = 1 / (1 + 1.6 * Math.hypot(gx, gy));
      const back = 0.3 * Math.min(2.2, seen[1] ?? 0) * deep + 0.04;
      tint(surface, k, [glass[0] * back, glass[1] * back, glass[2] * back], 1);
      if ((seeds.data[k] ?? 0) > 1.62) tint(surface, k, [0.35, 0.4, 0.36], 0.3);
      tint(surface, k, [0.4, 0.38, 0.33], clamp01((dust.data[k] ?? 0) - 1.05) * 0.5);
      surface.coat[k] = 1.15;
      surface.coatRough[k] = 0.1;
      surface.rough[k] = 0.9;
      if (how === "etched") {
        const frost = clamp01((strike.sunk.data[k] ?? 0) * 1.15);
        tint(surface, k, mix3([0.62, 0.66, 0.64], glass, 0.15), frost * 0.82);
        surface.coatRough[k] = mix(0.03, 0.6, frost);
        surface.coat[k] = mix(1.4, 0.5, frost);
      }
    }
  }
}
