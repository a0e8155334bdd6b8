import { addLine, blur, clamp01, emptyField, type Field, noise, smoothstep } from "./field.ts";
import { print } from "./print.ts";
import type { Random } from "./random.ts";
import { type Colour, mix3, type Surface, tint } from "./surface.ts";

export interface PaperWish {
  /** The stock. */
  stock: Colour;
  ground?: Colour;
  field: Float32Array;
  masks: readonly Float32Array[];
  inks: readonly Colour[];
  inside: Field;
  shape: Field;
  age: number;
  /** Letterpress bites, lithography lies on top, a rubber stamp is blotchy. */
  process: "letterpress" | "litho" | "stamp";
  gloss: number;
}

/** Folds and crumples: ridges in pixels, and where the skin of the paper broke. */
function creases(
  width: number,
  height: number,
  count: number,
  random: Random,
): { ridge: Field; broken: Field } {
  const ridge = emptyField(width, height);
  const broken = emptyField(width, height);
  for (let n = 0; n < count; n++) {
    let x = random.between(0, width);
    let y = random.between(0, height);
    let angle = random.between(0, Math.PI * 2);
    const steps = Math.round(random.between(3, 14));
    for (let s = 0; s < steps; s++) {
      const length = random.between(12, 40);
      const nx = x + Math.cos(angle) * length;
      const ny = y + Math.sin(angle) * length;
      addLine(ridge, x, y, nx, ny, 1.6, random.chance(0.5) ? 0.9 : -0.9);
      addLine(broken, x, y, nx, ny, 0.35, random.between(0.2, 0.8));
      x = nx;
      y = ny;
      angle += random.normal() * 0.3;
    }
  }
  return { ridge: blur(ridge, 1.6), broken };
}

/** A printed paper or card label. */
export function makePaper(surface: Surface, wish: PaperWish, random: Random): void {
  const { width, height, density, relief } = surface;
  const n = width * height;
  const fibre = noise(width, height, 2.2, 2, random, 2.2);
  const cloud = noise(width, height, density * 3, 4, random);
  const stain = noise(width, height, density * 16, 4, random);
  const cockle = noise(width, height, density * 10, 3, random);
  const fold = creases(width, height, Math.round(random.between(0, 2 + wish.age * 7)), random);
  for (let k = 0; k < n; k++) tint(surface, k, wish.stock, 1);
  if (wish.ground) {
    const ground = wish.ground;
    for (let k = 0; k < n; k++) tint(surface, k, ground, wish.field[k] ?? 0);
  }
  const ink = print(
    surface,
    {
      masks: wish.masks,
      inks: wish.inks,
      register: wish.process === "litho" ? 0.12 : 0.05,
      uneven: wish.process === "stamp" ? 0.85 : 0.22,
      lost: wish.process === "stamp" ? 0.2 + wish.age * 0.1 : wish.age * 0.16,
      bleed: wish.process === "stamp" ? 0.12 : 0.035,
      ...(wish.process === "litho" ? { screen: 0.5 } : {}),
    },
    random,
  );
  const bite = wish.process === "letterpress" ? 0.55 : 0;
  const pressed = blur(ink, 0.8);
  const old: Colour = mix3(wish.stock, [0.3, 0.19, 0.08], 0.55);
  for (let k = 0; k < n; k++) {
    relief.data[k] =
      (relief.data[k] ?? 0) +
      ((wish.shape.data[k] ?? 0) +
        (fibre.data[k] ?? 0) * 0.17 +
        (cockle.data[k] ?? 0) * density * 0.16 +
        (fold.ridge.data[k] ?? 0) * 1.2 -
        (pressed.data[k] ?? 0) * bite);
    const edge = smoothstep(density * 4, 0, wish.inside.data[k] ?? 0);
    const aged =
      wish.age * clamp01(0.45 + (stain.data[k] ?? 0) * 0.4 + (cloud.data[k] ?? 0) * 0.15 + edge * 0.5);
    surface.red[k] = (surface.red[k] ?? 0) * (1 - 0.16 * aged);
    surface.green[k] = (surface.green[k] ?? 0) * (1 - 0.3 * aged);
    surface.blue[k] = (surface.blue[k] ?? 0) * (1 - 0.52 * aged);
    tint(surface, k, old, clamp01(edge * 0.5 + aged - 0.55) * wish.age * 0.6);
    const v = 1 + (fibre.data[k] ?? 0) * 0.06 + (cloud.data[k] ?? 0) * 0.04;
    surface.red[k] = (surface.red[k] ?? 0) * v;
    surface.green[k] = (surface.green[k] ?? 0) * v;
    surface.blue[k] = (surface.blue[k] ?? 0) * v;
    tint(surface, k, wish.stock, clamp01((fold.broken.data[k] ?? 0) * 0.55));
    surface.rough[k] = 0.95;
    surface.soft[k] = 0.35;
    surface.coat[k] = wish.gloss;
    surface.coatRough[k] = 0.34;
  }
  foxing(surface, wish.age, random);
}

/** Brown spots of damp, each with a paler halo, and a tide line. */
function foxing(surface: Surface, age: number, random: Random): void {
  const { width, height, density } = surface;
  const count = Math.round(age * random.between(5, 60));
  for (let n = 0; n < count; n++) {
    const x = random.between(0, width);
    const y = random.between(0, height);
    const r = density * random.between(0.15, 0.9) * (random.chance(0.15) ? 2.2 : 1);
    const strength = random.between(0.15, 0.6);
    for (let j = Math.max(0, Math.floor(y - r * 2)); j < Math.min(height, y + r * 2); j++) {
      for (let i = Math.max(0, Math.floor(x - r * 2)); i < Math.min(width, x + r * 2); i++) {
        const t = ((i - x) ** 2 + (j - y) ** 2) / (r * r);
        tint(surface, j * width + i, [0.27, 0.13, 0.045], strength * Math.exp(-t * 1.8));
      }
    }
  }
  if (!random.chance(age * 0.6)) return;
  const tide = noise(width, height, density * 12, 3, random);
  const level = random.between(0.2, 0.7);
  for (let k = 0; k < tide.data.length; k++) {
    const near = (tide.data[k] ?? 0) - level;
    const line = Math.exp(-((near * 14) ** 2)) * 0.32 + (near > 0 ? 0.08 : 0);
    tint(surface, k, [0.25, 0.15, 0.06], line * age);
  }
}
