import { clamp01, noise, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import { type Colour, colour, makeSurface, mix3, paintAll, type Surface, tint } from "./surface.ts";

export type Backdrop = "felt" | "linen" | "wood" | "card" | "slate" | "newsprint";

const COLOURS: Record<Backdrop, readonly string[]> = {
  felt: ["#1d2b26", "#23262e", "#5c5f63", "#3b1f24", "#7b776d"],
  linen: ["#b9ac92", "#8d8d88", "#4d5661", "#c9c4b6"],
  wood: ["#7a5433", "#4a3021", "#a37a4c", "#3a2b22"],
  card: ["#d9d6cd", "#9a9c9d", "#c8bda5", "#55585c"],
  slate: ["#3b4043", "#2d2f33"],
  newsprint: ["#c9c2b1", "#d6d0c2"],
};

/** Wood grain into a surface: lines along x, darker in the pores. */
export function grainWood(surface: Surface, base: Colour, random: Random): void {
  const { width, height, density } = surface;
  const broad = noise(width, height, density * 2.2, 3, random, 9);
  const fine = noise(width, height, Math.max(1.6, density * 0.22), 2, random, 22);
  const bend = noise(width, height, density * 30, 1, random);
  const dark: Colour = [base[0] * 0.38, base[1] * 0.33, base[2] * 0.3];
  paintAll(surface, base);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const phase =
        (j / density) * (0.9 + (bend.data[k] ?? 0) * 0.05) +
        (broad.data[k] ?? 0) * 1.1 +
        (bend.data[k] ?? 0) * 5;
      const year = phase * 0.42 - Math.floor(phase * 0.42);
      const ring = year ** 2.2 * smoothstep(1, 0.9, year) * (0.6 + 0.35 * (bend.data[k] ?? 0));
      const pore = clamp01(((fine.data[k] ?? 0) - 0.35) * 2.2);
      tint(surface, k, dark, clamp01(0.12 + ring * ring * 0.42 + pore * 0.4));
      surface.relief.data[k] =
        (surface.relief.data[k] ?? 0) + (-pore * 0.7 - ring * 0.25 + (fine.data[k] ?? 0) * 0.25);
      surface.rough[k] = 0.62 + ring * 0.15;
    }
  }
}

/** A tabby weave into a surface, threads of the given width in millimetres. */
export function weavePlain(
  surface: Surface,
  base: Colour,
  thread: number,
  depth: number,
  random: Random,
): void {
  const { width, height, density } = surface;
  const p = Math.max(2.6, thread * density);
  const bend = noise(width, height, p * 16, 2, random);
  const slub = noise(width, height, p * 1.5, 2, random, 5);
  paintAll(surface, base);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const u = i / p + (bend.data[k] ?? 0) * 0.6;
      const v = j / p + (bend.data[k] ?? 0) * 0.5;
      const over = (Math.floor(u) + Math.floor(v)) % 2 === 0;
      const across = over ? Math.abs(Math.sin(Math.PI * u)) : Math.abs(Math.sin(Math.PI * v));
      const along = over ? Math.abs(Math.sin(Math.PI * v)) : Math.abs(Math.sin(Math.PI * u));
      const h = across * (0.5 + 0.5 * along);
      surface.relief.data[k] = (surface.relief.data[k] ?? 0) + (h * depth * p + (slub.data[k] ?? 0) * 0.14);
      const shade = 0.55 + 0.5 * h + (slub.data[k] ?? 0) * 0.04;
      surface.red[k] = (surface.red[k] ?? 0) * shade;
      surface.green[k] = (surface.green[k] ?? 0) * shade;
      surface.blue[k] = (surface.blue[k] ?? 0) * shade;
      surface.rough[k] = 1;
      surface.soft[k] = 0.5;
    }
  }
}

/** What lies under and beside the thing photographed. */
export function makeBackdrop(
  kind: Backdrop,
  width: number,
  height: number,
  density: number,
  random: Random,
): Surface {
  const surface = makeSurface(width, height, density);
  const base = colour(random.pick(COLOURS[kind]));
  if (kind === "wood") {
    grainWood(surface, base, random);
    return surface;
  }
  if (kind === "linen") {
    weavePlain(surface, base, random.between(0.35, 0.6), 0.3, random);
    return surface;
  }
  paintAll(surface, base);
  const fuzz = noise(width, height, Math.max(2, density * (kind === "felt" ? 0.5 : 0.25)), 4, random);
  const lumps = noise(width, height, density * 5, 3, random);
  const dark = mix3(base, [0, 0, 0], 0.5);
  for (let k = 0; k < fuzz.data.length; k++) {
    surface.relief.data[k] =
      (fuzz.data[k] ?? 0) * (kind === "felt" ? 0.8 : kind === "slate" ? 0.5 : 0.15) +
      (lumps.data[k] ?? 0) * 0.6;
    tint(
      surface,
      k,
      dark,
      clamp01(0.2 + (fuzz.data[k] ?? 0) * (kind === "felt" ? 0.35 : 0.12) + (lumps.data[k] ?? 0) * 0.15),
    );
    surface.rough[k] = kind === "slate" ? 0.55 : 0.95;
    surface.soft[k] = kind === "felt" ? 0.8 : 0.2;
  }
  return surface;
}
