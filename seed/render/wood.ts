import { grainWood } from "./backdrop.ts";
import { blur, clamp01, type Field, noise } from "./field.ts";
import type { Random } from "./random.ts";
import type { Strike } from "./strike.ts";
import { type Colour, mix3, type Surface, tint } from "./surface.ts";

/** Wood with a mark burnt, stamped or inked into it. */
export function makeWood(
  surface: Surface,
  base: Colour,
  strike: Strike,
  shape: Field,
  how: "burnt" | "stamped",
  age: number,
  random: Random,
): void {
  const { width, height, density, relief } = surface;
  const grey = 0.3 * base[0] + 0.59 * base[1] + 0.11 * base[2];
  const aged = mix3(
    mix3(base, [grey, grey, grey], 0.28),
    [base[0] * 0.5, base[1] * 0.45, base[2] * 0.42],
    age * 0.5,
  );
  grainWood(surface, aged, random);
  const uneven = noise(width, height, density * 2.5, 4, random);
  const halo = blur(strike.sunk, density * 0.7);
  const scar = noise(width, height, density * 5, 4, random);
  for (let k = 0; k < relief.data.length; k++) {
    relief.data[k] = (relief.data[k] ?? 0) + ((shape.data[k] ?? 0) + (strike.relief.data[k] ?? 0));
    const sunk = strike.sunk.data[k] ?? 0;
    if (how === "burnt") {
      tint(surface, k, mix3(base, [0.05, 0.02, 0.008], 0.75), clamp01((halo.data[k] ?? 0) * 0.55));
      tint(surface, k, [0.012, 0.009, 0.007], clamp01(sunk * (1.15 + (uneven.data[k] ?? 0) * 0.35)));
    } else tint(surface, k, mix3(base, [0.02, 0.014, 0.01], 0.8), clamp01(sunk * 0.8));
    tint(surface, k, [0.03, 0.02, 0.012], clamp01((scar.data[k] ?? 0) - 0.3) * age * 0.5);
    surface.coat[k] = 0.35 * (1 - sunk);
    surface.coatRough[k] = 0.42;
  }
}
