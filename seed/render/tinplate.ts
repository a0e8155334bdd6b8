import { blur, clamp01, type Field, noise, smoothstep } from "./field.ts";
import { rust, scratch } from "./metal.ts";
import { print } from "./print.ts";
import type { Random } from "./random.ts";
import { type Colour, type Surface, tint } from "./surface.ts";

export interface TinplateWish {
  /** Colour of the thing round the mark. */
  around: Colour;
  /** The ground of the mark, and its mask. */
  ground: Colour;
  field: Float32Array;
  masks: readonly Float32Array[];
  inks: readonly Colour[];
  shape: Field;
  /** 0 as new, 1 played with for years. */
  age: number;
  /** Fired enamel: thicker, glossier, chips instead of scratches. */
  enamel: boolean;
  /** Relief of the mark in pixels where it is pressed into the sheet; zero where only printed. */
  pressed: Field;
}

/** Printed and varnished tinplate, or enamelled iron. */
export function makeTinplate(surface: Surface, wish: TinplateWish, random: Random): void {
  const { width, height, density, relief } = surface;
  const n = width * height;
  for (let k = 0; k < n; k++) tint(surface, k, wish.around, 1);
  const shade = noise(width, height, density * 8, 3, random);
  const placed = blur({ width, height, data: wish.field }, 0.7);
  for (let k = 0; k < n; k++) {
    tint(surface, k, wish.ground, placed.data[k] ?? 0);
    const v = 1 + (shade.data[k] ?? 0) * 0.05;
    surface.red[k] = (surface.red[k] ?? 0) * v;
    surface.green[k] = (surface.green[k] ?? 0) * v;
    surface.blue[k] = (surface.blue[k] ?? 0) * v;
  }
  print(
    surface,
    {
      masks: wish.masks,
      inks: wish.inks,
      register: wish.enamel ? 0.02 : 0.09,
      uneven: 0.08,
      lost: 0,
      bleed: wish.enamel ? 0.06 : 0.03,
      ...(wish.enamel ? {} : { screen: 0.42 }),
    },
    random,
  );
  const yellow: Colour = [0.55, 0.4, 0.16];
  const dent = noise(width, height, density * random.between(8, 14), 2, random);
  const peel = noise(width, height, Math.max(2, density * (wish.enamel ? 0.9 : 0.5)), 2, random);
  const scratches = scratch(width, height, 60 * wish.age, random);
  const chips = noise(width, height, density * (wish.enamel ? 4.5 : 1.1), wish.enamel ? 3 : 5, random);
  const region = noise(width, height, density * 8, 2, random);
  const dust = noise(width, height, density * 2, 4, random);
  const bare: Field = { width, height, data: new Float32Array(n) };
  for (let k = 0; k < n; k++) {
    relief.data[k] =
      (relief.data[k] ?? 0) +
      ((wish.shape.data[k] ?? 0) +
        (wish.pressed.data[k] ?? 0) +
        (dent.data[k] ?? 0) * density * 0.22 +
        (peel.data[k] ?? 0) * (wish.enamel ? 0.3 : 0.1));
    tint(surface, k, yellow, 0.1 * wish.age * (1 + (dust.data[k] ?? 0) * 0.5));
    const dull = clamp01(0.3 + (dust.data[k] ?? 0) * 0.5) * wish.age;
    surface.coat[k] = wish.enamel ? 2 - dull * 0.7 : 1.2 - dull * 0.6;
    surface.coatRough[k] = (wish.enamel ? 0.05 : 0.13) + dull * 0.3;
    surface.rough[k] = 0.9;
    const chip = smoothstep(
      (wish.enamel ? 1.75 : 1.45) - wish.age * 0.45,
      (wish.enamel ? 1.79 : 1.55) - wish.age * 0.42,
      (chips.data[k] ?? 0) + (region.data[k] ?? 0) * 0.45,
    );
    const line = wish.enamel ? 0 : smoothstep(0.16, 0.4, -(scratches.data[k] ?? 0));
    bare.data[k] = Math.max(chip, line);
    relief.data[k] =
      (relief.data[k] ?? 0) + ((scratches.data[k] ?? 0) * 0.4 - chip * (wish.enamel ? 2.2 : 0.5));
  }
  const halo = blur(bare, density * 0.35);
  for (let k = 0; k < n; k++) {
    const open = bare.data[k] ?? 0;
    tint(surface, k, [0.16, 0.08, 0.035], clamp01((halo.data[k] ?? 0) * 0.7 * wish.age));
    if (open <= 0) continue;
    const metal: Colour = wish.enamel ? [0.05, 0.035, 0.03] : [0.6, 0.58, 0.55];
    tint(surface, k, metal, open);
    surface.metal[k] = open * (wish.enamel ? 0.2 : 0.85);
    surface.rough[k] = 0.42;
    surface.coat[k] = (surface.coat[k] ?? 0) * (1 - open);
  }
  rust(surface, wish.age * (wish.enamel ? 0.3 : 0.5), random, halo);
}
