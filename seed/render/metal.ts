import { addLine, blur, clamp01, emptyField, type Field, grain, mix, noise, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import type { Strike } from "./strike.ts";
import { type Colour, colour, type Surface, tint } from "./surface.ts";

export type Metal = "pewter" | "plate" | "brass" | "steel" | "nickel" | "copper" | "lead" | "iron" | "tin";

interface Look {
  colour: Colour;
  rough: number;
  /** Roll of the surface from casting, hammering or wear: slope. */
  roll: number;
  scratches: number;
  /** What gathers in the hollows. */
  grime: Colour;
  grimeAmount: number;
  /** A film over all of it, in patches. */
  film: Colour;
  filmAmount: number;
  pits: number;
}

const LOOKS: Record<Metal, Look> = {
  pewter: {
    colour: [0.56, 0.555, 0.53],
    rough: 0.4,
    roll: 0.028,
    scratches: 90,
    grime: [0.035, 0.033, 0.03],
    grimeAmount: 0.85,
    film: [0.2, 0.2, 0.195],
    filmAmount: 0.5,
    pits: 0.35,
  },
  plate: {
    colour: [0.93, 0.91, 0.86],
    rough: 0.15,
    roll: 0.02,
    scratches: 150,
    grime: [0.03, 0.024, 0.02],
    grimeAmount: 0.8,
    film: [0.42, 0.33, 0.2],
    filmAmount: 0.35,
    pits: 0.08,
  },
  brass: {
    colour: [0.83, 0.62, 0.29],
    rough: 0.3,
    roll: 0.014,
    scratches: 80,
    grime: [0.05, 0.035, 0.015],
    grimeAmount: 0.8,
    film: [0.25, 0.15, 0.06],
    filmAmount: 0.5,
    pits: 0.2,
  },
  steel: {
    colour: [0.53, 0.53, 0.53],
    rough: 0.3,
    roll: 0.008,
    scratches: 130,
    grime: [0.05, 0.035, 0.025],
    grimeAmount: 0.6,
    film: [0.14, 0.12, 0.11],
    filmAmount: 0.35,
    pits: 0.4,
  },
  nickel: {
    colour: [0.66, 0.62, 0.55],
    rough: 0.24,
    roll: 0.02,
    scratches: 50,
    grime: [0.05, 0.04, 0.03],
    grimeAmount: 0.75,
    film: [0.3, 0.26, 0.2],
    filmAmount: 0.3,
    pits: 0.2,
  },
  copper: {
    colour: [0.8, 0.42, 0.27],
    rough: 0.32,
    roll: 0.02,
    scratches: 70,
    grime: [0.03, 0.035, 0.025],
    grimeAmount: 0.8,
    film: [0.16, 0.08, 0.05],
    filmAmount: 0.55,
    pits: 0.2,
  },
  lead: {
    colour: [0.36, 0.36, 0.37],
    rough: 0.6,
    roll: 0.07,
    scratches: 40,
    grime: [0.08, 0.075, 0.065],
    grimeAmount: 0.9,
    film: [0.45, 0.44, 0.41],
    filmAmount: 0.5,
    pits: 0.6,
  },
  iron: {
    colour: [0.2, 0.19, 0.18],
    rough: 0.74,
    roll: 0.045,
    scratches: 25,
    grime: [0.1, 0.045, 0.022],
    grimeAmount: 0.9,
    film: [0.06, 0.047, 0.04],
    filmAmount: 0.8,
    pits: 0.8,
  },
  tin: {
    colour: [0.72, 0.71, 0.69],
    rough: 0.3,
    roll: 0.014,
    scratches: 70,
    grime: [0.09, 0.045, 0.025],
    grimeAmount: 0.7,
    film: [0.3, 0.24, 0.18],
    filmAmount: 0.4,
    pits: 0.3,
  },
};

/** Scratches of use: many fine ones mostly one way, a few long ones any way. Values are depths in pixels. */
export function scratch(width: number, height: number, count: number, random: Random): Field {
  const field = emptyField(width, height);
  const main = random.between(0, Math.PI);
  const reach = Math.max(width, height);
  for (let i = 0; i < count * 4; i++) {
    const long = random.chance(0.12);
    const angle = long ? random.between(0, Math.PI) : main + random.normal() * 0.35;
    const length = reach * (long ? random.between(0.15, 0.6) : random.between(0.02, 0.16));
    const x = random.between(0, width);
    const y = random.between(0, height);
    const depth =
      (long ? random.between(0.15, 0.5) : random.between(0.05, 0.28)) * (random.chance(0.06) ? 2.2 : 1);
    const bx = x + Math.cos(angle) * length;
    const by = y + Math.sin(angle) * length;
    addLine(field, x, y, bx, by, random.between(0.05, 0.45), -depth);
  }
  return field;
}

/** Knocks: small shallow dents. */
function knocks(field: Field, count: number, density: number, random: Random): void {
  const { width, height, data } = field;
  for (let n = 0; n < count; n++) {
    const x = random.between(0, width);
    const y = random.between(0, height);
    const r = Math.min(11, density * random.between(0.1, 0.55));
    const depth = r * random.between(0.05, 0.16);
    for (let j = Math.max(0, Math.floor(y - r * 1.5)); j < Math.min(height, y + r * 1.5); j++) {
      for (let i = Math.max(0, Math.floor(x - r * 1.5)); i < Math.min(width, x + r * 1.5); i++) {
        const t = ((i - x) ** 2 + (j - y) ** 2) / (r * r);
        data[j * width + i] =
          (data[j * width + i] ?? 0) +
          depth * (0.35 * Math.exp(-((Math.sqrt(t) - 1.1) ** 2) * 8) - Math.exp(-t * 2));
      }
    }
  }
}

export interface MetalWish {
  metal: Metal;
  /** 0 kept bright, 1 long neglected. */
  age: number;
  /** Brushed or ground one way, in degrees; none where absent. */
  brushed?: number;
  strike: Strike;
  shape: Field;
  inside: Field;
  /** Etched or filled dark in the sunk parts: 0 to 1. */
  blacken?: number;
}

/** Clothes a surface in metal with a mark struck into it. */
export function makeMetal(surface: Surface, wish: MetalWish, random: Random): void {
  const { width, height, density, relief } = surface;
  const look = LOOKS[wish.metal];
  const hue = random.between(-0.03, 0.03);
  const base: Colour = [look.colour[0] * (1 + hue), look.colour[1], look.colour[2] * (1 - hue * 1.5)];
  const roll = noise(width, height, density * random.between(3.5, 7), 3, random);
  const micro = noise(width, height, Math.max(1.5, density * 0.09), 2, random);
  const scratches = scratch(width, height, look.scratches * random.between(0.5, 1.3), random);
  const patches = noise(width, height, density * 2.6, 4, random);
  const clouds = noise(width, height, density * 7, 3, random);
  const pitNoise = noise(width, height, Math.max(1.6, density * 0.18), 2, random);
  const brush = wish.brushed === undefined ? undefined : noise(width, height, 1.3, 2, random, 34);
  const amplitude = look.roll * density * 4;
  knocks(relief, Math.round(random.between(0, 9)), density, random);
  for (let k = 0; k < relief.data.length; k++) {
    const pit =
      look.pits * wish.age * smoothstep(0.75, 1.25, (pitNoise.data[k] ?? 0) + (patches.data[k] ?? 0) * 0.35);
    relief.data[k] =
      (relief.data[k] ?? 0) +
      ((wish.shape.data[k] ?? 0) +
        (wish.strike.relief.data[k] ?? 0) +
        (roll.data[k] ?? 0) * amplitude +
        (micro.data[k] ?? 0) * 0.06 +
        (scratches.data[k] ?? 0) * 0.55 -
        pit * 1.1 +
        (brush ? (brush.data[k] ?? 0) * 0.075 : 0));
  }
  const bowl = blur(relief, Math.max(2, density * 0.3));
  const tight = blur(relief, Math.max(1, density * 0.11));
  const dust = grain(width, height, random);
  for (let k = 0; k < relief.data.length; k++) {
    const hollow = clamp01(
      ((bowl.data[k] ?? 0) - (relief.data[k] ?? 0)) * 0.55 +
        ((tight.data[k] ?? 0) - (relief.data[k] ?? 0)) * 1.1,
    );
    const proud = clamp01(((relief.data[k] ?? 0) - (bowl.data[k] ?? 0)) * 0.5);
    const dirt = clamp01(
      (hollow * 1.15 + (wish.strike.sunk.data[k] ?? 0) * 0.22) *
        look.grimeAmount *
        (0.3 + 0.85 * wish.age) *
        (0.8 + 0.55 * (patches.data[k] ?? 0)),
    );
    const film = clamp01(
      look.filmAmount *
        wish.age *
        (0.5 + 0.75 * (clouds.data[k] ?? 0) + 0.35 * (patches.data[k] ?? 0)) *
        (1 - proud * 0.8) +
        ((wish.inside.data[k] ?? 0) < density ? 0.12 * wish.age : 0),
    );
    surface.red[k] = base[0];
    surface.green[k] = base[1];
    surface.blue[k] = base[2];
    tint(surface, k, look.film, film);
    let bare = 1 - 0.25 * film * (wish.metal === "iron" || wish.metal === "lead" ? 2.4 : 1);
    tint(surface, k, look.grime, dirt);
    bare *= 1 - 0.85 * dirt;
    const dark = (wish.blacken ?? 0) * clamp01((wish.strike.sunk.data[k] ?? 0) * 1.3);
    if (dark > 0) {
      tint(surface, k, [0.022, 0.02, 0.02], dark);
      bare *= 1 - 0.8 * dark;
    }
    surface.metal[k] = clamp01(bare);
    surface.rough[k] = clamp01(
      look.rough * (0.8 + 0.5 * wish.age) +
        0.12 * (patches.data[k] ?? 0) * wish.age +
        film * 0.25 +
        dirt * 0.4 -
        proud * 0.14 -
        (scratches.data[k] ?? 0) * 0.3 +
        (dust.data[k] ?? 0) * 0.03,
    );
  }
  if (wish.metal === "steel" || wish.metal === "tin") rust(surface, wish.age * 0.8, random);
  if (wish.metal === "plate") bleed(surface, bowl, wish.age, random);
}

/** Rust in spots and their haloes. */
export function rust(surface: Surface, amount: number, random: Random, where?: Field): void {
  const { width, height, density } = surface;
  const spots = noise(width, height, density * 0.9, 4, random);
  const region = noise(width, height, density * 6, 2, random);
  const tone = noise(width, height, Math.max(1.5, density * 0.2), 3, random);
  const dark = colour("#3a1c10");
  const light = colour("#8f4a1e");
  for (let k = 0; k < spots.data.length; k++) {
    const push = where ? (where.data[k] ?? 0) * 1.3 : 0;
    const spot = smoothstep(
      1.5 - amount,
      1.95 - amount,
      (spots.data[k] ?? 0) + (region.data[k] ?? 0) * 0.55 + push,
    );
    if (spot <= 0) continue;
    const mixed: Colour = [
      mix(dark[0], light[0], clamp01(0.5 + (tone.data[k] ?? 0) * 0.6)),
      mix(dark[1], light[1], clamp01(0.5 + (tone.data[k] ?? 0) * 0.6)),
      mix(dark[2], light[2], clamp01(0.5 + (tone.data[k] ?? 0) * 0.6)),
    ];
    tint(surface, k, mixed, spot);
    surface.metal[k] = (surface.metal[k] ?? 0) * (1 - spot);
    surface.coat[k] = (surface.coat[k] ?? 0) * (1 - spot);
    surface.rough[k] = mix(surface.rough[k] ?? 0, 0.9, spot);
    surface.relief.data[k] = (surface.relief.data[k] ?? 0) + (tone.data[k] ?? 0) * 0.5 * spot;
  }
}

/** Copper showing where silver plate has been rubbed through. */
function bleed(surface: Surface, bowl: Field, age: number, random: Random): void {
  const { width, height, density } = surface;
  const area = noise(width, height, density * 5, 3, random);
  for (let k = 0; k < area.data.length; k++) {
    const high = clamp01(((surface.relief.data[k] ?? 0) - (bowl.data[k] ?? 0)) * 0.4);
    const through = smoothstep(1.05, 1.6, (area.data[k] ?? 0) + high * 0.9 + age * 0.25);
    tint(surface, k, [0.8, 0.47, 0.3], through * 0.8);
  }
}
