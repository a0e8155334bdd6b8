import { blur, clamp01, type Field, mix, noise, pebbles, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import type { Strike } from "./strike.ts";
import { type Colour, colour, mix3, type Surface, tint } from "./surface.ts";

export type Body = "grey" | "brown" | "buff" | "white" | "red" | "unglazed";

const BODIES: Record<Body, { base: string; deep: string; light: string; peel: number; gloss: number }> = {
  grey: { base: "#a09c90", deep: "#5f5c55", light: "#c4c0b4", peel: 0.95, gloss: 0.9 },
  brown: { base: "#6e4b30", deep: "#33200f", light: "#987048", peel: 0.85, gloss: 1 },
  buff: { base: "#b7a075", deep: "#6d5836", light: "#d2c09a", peel: 0.6, gloss: 0.85 },
  white: { base: "#d8d2c2", deep: "#a59f8f", light: "#ebe6da", peel: 0.12, gloss: 0.9 },
  red: { base: "#8e4c34", deep: "#4e2719", light: "#b06a4a", peel: 0.2, gloss: 0.12 },
  unglazed: { base: "#b0a48d", deep: "#6f6553", light: "#c9bfa9", peel: 0.25, gloss: 0.05 },
};

export interface StonewareWish {
  body: Body;
  strike: Strike;
  shape: Field;
  /** Painted or printed colours over or under the glaze. */
  paint?: { masks: readonly Float32Array[]; inks: readonly Colour[]; brushed: boolean };
  /** Cobalt brushed over the stamp. */
  cobalt: number;
  age: number;
  /** Marks of throwing, across x. */
  throwing: number;
}

/** Salt-glazed or plain stoneware, with an impressed, incised, painted or printed mark. */
export function makeStoneware(surface: Surface, wish: StonewareWish, random: Random): void {
  const { width, height, density, relief } = surface;
  const n = width * height;
  const look = BODIES[wish.body];
  const base = colour(look.base);
  const deep = colour(look.deep);
  const light = colour(look.light);
  const peel = pebbles(width, height, Math.max(1.6, density * random.between(0.34, 0.6)), random);
  const clay = noise(width, height, Math.max(1.5, density * 0.25), 3, random);
  const clouds = noise(width, height, density * 14, 4, random);
  const mottle = noise(width, height, density * 1.8, 4, random);
  const ridges = noise(width, height, density * 2.2, 2, random, 30);
  const specks = noise(width, height, Math.max(1.8, density * 0.3), 2, random);
  const glaze = look.gloss > 0.3;
  const softened = glaze ? blur(wish.strike.relief, Math.max(0.6, density * 0.06)) : wish.strike.relief;
  for (let k = 0; k < n; k++) {
    const pebble = glaze
      ? (peel.data[k] ?? 0) * look.peel * density * 0.034 * (1 - 0.65 * (wish.strike.sunk.data[k] ?? 0))
      : (clay.data[k] ?? 0) * 0.4;
    relief.data[k] =
      (relief.data[k] ?? 0) +
      ((wish.shape.data[k] ?? 0) +
        (softened.data[k] ?? 0) +
        pebble +
        (ridges.data[k] ?? 0) * wish.throwing * density * 0.12 +
        (glaze ? 0.06 : 0.3) * (clay.data[k] ?? 0));
  }
  const bowl = blur(relief, density * 1.1);
  const tight = blur(relief, density * 0.4);
  for (let k = 0; k < n; k++) {
    const hollow = clamp01(
      (((bowl.data[k] ?? 0) - (relief.data[k] ?? 0)) * 1.1 +
        ((tight.data[k] ?? 0) - (relief.data[k] ?? 0)) * 1.6) /
        (density * 0.45) +
        (wish.strike.sunk.data[k] ?? 0) * 0.18,
    );
    const proud = clamp01(((relief.data[k] ?? 0) - (bowl.data[k] ?? 0)) / (density * 0.5));
    const t = clamp01(0.46 + (clouds.data[k] ?? 0) * 0.2 + (mottle.data[k] ?? 0) * 0.16 + hollow * 0.75);
    let c = t < 0.5 ? mix3(light, base, t * 2) : mix3(base, deep, (t - 0.5) * 1.5);
    c = mix3(c, light, proud * 0.4 + (glaze ? clamp01((peel.data[k] ?? 0) * 0.35) * 0.2 : 0));
    tint(surface, k, c, 1);
    if (glaze)
      tint(
        surface,
        k,
        mix3(deep, [0, 0, 0], 0.25),
        clamp01(-(peel.data[k] ?? 0) * 0.5 - 0.3) * 0.22 * (1 - (wish.strike.sunk.data[k] ?? 0)),
      );
    const speck = smoothstep(1.3, 1.55, (specks.data[k] ?? 0) + (clouds.data[k] ?? 0) * 0.2);
    tint(surface, k, [0.05, 0.028, 0.015], speck * 0.75);
    surface.coat[k] = look.gloss * (1 - 0.2 * clamp01(clouds.data[k] ?? 0));
    surface.coatRough[k] = 0.1 + (1 - look.gloss) * 0.6;
    surface.rough[k] = 0.9;
  }
  if (wish.cobalt > 0) cobaltOver(surface, wish, random);
  if (wish.paint) paintOn(surface, wish.paint, random);
  wear(surface, wish.age, random);
}

function cobaltOver(surface: Surface, wish: StonewareWish, random: Random): void {
  const { width, height, density } = surface;
  const near = blur(wish.strike.sunk, density * 1.3);
  const run = noise(width, height, density * 2.2, 3, random);
  const blue = colour("#1f2f6e");
  const pale = colour("#566aa6");
  for (let k = 0; k < near.data.length; k++) {
    const cover = smoothstep(0.06, 0.4, (near.data[k] ?? 0) + (run.data[k] ?? 0) * 0.06) * wish.cobalt;
    tint(
      surface,
      k,
      mix3(pale, blue, clamp01((wish.strike.sunk.data[k] ?? 0) * 1.5 + 0.05 + (run.data[k] ?? 0) * 0.25)),
      cover * clamp01(0.5 + (wish.strike.sunk.data[k] ?? 0) * 0.6),
    );
  }
}

function paintOn(surface: Surface, paint: NonNullable<StonewareWish["paint"]>, random: Random): void {
  const { width, height, density } = surface;
  const load = noise(width, height, density * 1.5, 3, random);
  paint.masks.forEach((mask, index) => {
    const ink = paint.inks[index] ?? [0, 0, 0];
    const run = blur({ width, height, data: mask }, paint.brushed ? density * 0.16 : density * 0.05);
    const pool = blur({ width, height, data: mask }, density * 0.5);
    for (let k = 0; k < mask.length; k++) {
      const cover = smoothstep(
        0.25,
        0.7,
        (run.data[k] ?? 0) + (paint.brushed ? (load.data[k] ?? 0) * 0.1 : 0),
      );
      const edge = clamp01(1 - (pool.data[k] ?? 0));
      tint(
        surface,
        k,
        ink,
        clamp01(
          cover *
            (paint.brushed
              ? 0.62 + 0.22 * (load.data[k] ?? 0) + 0.3 * edge
              : 0.86 + (load.data[k] ?? 0) * 0.12),
        ),
      );
    }
  });
}

function wear(surface: Surface, age: number, random: Random): void {
  const { width, height, density } = surface;
  const chips = noise(width, height, density * 3, 4, random);
  const grime = noise(width, height, density * 4, 4, random);
  for (let k = 0; k < chips.data.length; k++) {
    const chip = smoothstep(1.75 - age * 0.35, 1.82 - age * 0.35, chips.data[k] ?? 0);
    if (chip > 0) {
      tint(surface, k, [0.5, 0.45, 0.36], chip * 0.8);
      surface.relief.data[k] = (surface.relief.data[k] ?? 0) - chip * density * 0.25;
      surface.coat[k] = (surface.coat[k] ?? 0) * (1 - chip);
    }
    const dirt = clamp01((grime.data[k] ?? 0) - 0.35) * age * 0.4;
    tint(surface, k, [0.06, 0.045, 0.03], dirt);
    surface.coatRough[k] = mix(surface.coatRough[k] ?? 0, 0.5, dirt);
  }
}
