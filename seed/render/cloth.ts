import { blur, clamp01, emptyField, type Field, mix, noise, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import { type Colour, mix3, type Surface, tint } from "./surface.ts";

export interface WovenWish {
  field: Float32Array;
  masks: readonly Float32Array[];
  inks: readonly Colour[];
  /** The cloth round the mark, and the ground within its frame. */
  cloth: Colour;
  ground: Colour;
  x: number;
  y: number;
  /** Degrees clockwise of the weave. */
  turn: number;
  shape: Field;
  inside: Field;
  age: number;
}

/** Handling darkens pale cloth to brown and dark cloth to dust. */
function soilOf(cloth: Colour): Colour {
  const light = 0.3 * cloth[0] + 0.59 * cloth[1] + 0.11 * cloth[2];
  return light > 0.15 ? [0.22, 0.15, 0.085] : mix3(cloth, [0.09, 0.08, 0.07], 0.6);
}

/** A jacquard label: every figure is floats across a satin ground, thread by thread. */
export function makeWoven(surface: Surface, wish: WovenWish, random: Random): void {
  const { width, height, density, relief } = surface;
  const warp = Math.max(2.35, density * random.between(0.2, 0.26));
  const weft = warp * random.between(0.95, 1.2);
  const c = Math.cos((wish.turn * Math.PI) / 180);
  const s = Math.sin((wish.turn * Math.PI) / 180);
  const bend = noise(width, height, density * 5, 2, random);
  const drape = noise(width, height, density * 11, 3, random);
  const soil = noise(width, height, density * 6, 4, random);
  const tones = Float32Array.from({ length: 4096 }, () => random.next());
  const smooth = wish.masks.map((mask) => blur({ width, height, data: mask }, 0.6).data);
  const field = wish.field;
  const dirt = soilOf(wish.cloth);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const dx = i - wish.x;
      const dy = j - wish.y;
      const u = (dx * c + dy * s) / warp + (bend.data[k] ?? 0) * 0.35 + 2048;
      const v = (-dx * s + dy * c) / weft + (bend.data[k] ?? 0) * 0.35 + 2048;
      const iu = Math.floor(u);
      const iv = Math.floor(v);
      const fu = u - iu;
      const fv = v - iv;
      const px = Math.min(
        width - 1,
        Math.max(0, Math.round(wish.x + (iu + 0.5 - 2048) * warp * c - (iv + 0.5 - 2048) * weft * s)),
      );
      const py = Math.min(
        height - 1,
        Math.max(0, Math.round(wish.y + (iu + 0.5 - 2048) * warp * s + (iv + 0.5 - 2048) * weft * c)),
      );
      const at = py * width + px;
      let ink = -1;
      let best = 0.33;
      smooth.forEach((mask, n) => {
        const m = mask[at] ?? 0;
        if (m > best) {
          best = m;
          ink = n;
        }
      });
      let colour: Colour;
      let h: number;
      if (ink >= 0) {
        const thread = tones[(iv * 31 + ink * 977) & 4095] ?? 0;
        const bind = (iu + iv * 3) % 7 === 0 ? 0.55 : 1;
        h = (0.5 + 0.5 * Math.sin(Math.PI * fv)) * bind + 0.25 + 0.1 * thread;
        colour = mix3(wish.inks[ink] ?? wish.ground, [0, 0, 0], 0.1 + 0.14 * thread);
      } else {
        const satin = (iu * 2 + iv) % 5 === 0;
        const thread = tones[(satin ? iv * 17 + 7 : iu * 13 + 301) & 4095] ?? 0;
        h = satin ? 0.5 * Math.sin(Math.PI * fv) : 0.35 + 0.4 * Math.sin(Math.PI * fu);
        const cloth = mix3(wish.cloth, wish.ground, (field[at] ?? 0) > 0.5 ? 1 : 0);
        colour = mix3(cloth, [0, 0, 0], (satin ? 0.26 : 0.1) + 0.12 * thread);
      }
      tint(surface, k, colour, 1);
      const dark = 0.5 + 0.5 * clamp01(h);
      surface.red[k] = (surface.red[k] ?? 0) * dark;
      surface.green[k] = (surface.green[k] ?? 0) * dark;
      surface.blue[k] = (surface.blue[k] ?? 0) * dark;
      const edge = smoothstep(density * 1.6, 0, wish.inside.data[k] ?? 0);
      tint(surface, k, dirt, wish.age * clamp01(0.18 + (soil.data[k] ?? 0) * 0.3 + edge * 0.25) * 0.6);
      relief.data[k] =
        (relief.data[k] ?? 0) +
        ((wish.shape.data[k] ?? 0) + h * warp * 0.3 + (drape.data[k] ?? 0) * density * 0.3);
      surface.rough[k] = 0.62;
      surface.soft[k] = 0.5;
    }
  }
}

/** A mark worked with the needle: satin stitches that catch the light along their run. */
export function makeEmbroidered(
  surface: Surface,
  masks: readonly Float32Array[],
  inks: readonly Colour[],
  turn: number,
  random: Random,
): void {
  const { width, height, density, relief } = surface;
  const pitch = Math.max(2.6, density * 0.36);
  masks.forEach((mask, n) => {
    const silk = inks[n] ?? [0, 0, 0];
    const round = blur({ width, height, data: mask }, density * 0.28);
    const sharp = blur({ width, height, data: mask }, 0.9);
    const angle = ((turn + 62 + n * 40) * Math.PI) / 180;
    const ca = Math.cos(angle);
    const sa = Math.sin(angle);
    const wave = noise(width, height, density * 3, 2, random);
    const tones = Float32Array.from({ length: 1024 }, () => random.next());
    for (let j = 0; j < height; j++) {
      for (let i = 0; i < width; i++) {
        const k = j * width + i;
        const cover = smoothstep(0.3, 0.62, sharp.data[k] ?? 0);
        if (cover <= 0) continue;
        const u = (i * ca + j * sa) / pitch + (wave.data[k] ?? 0) * 0.5 + 512;
        const iu = Math.floor(u);
        const ridge = Math.sin(Math.PI * (u - iu));
        const thread = tones[iu & 1023] ?? 0;
        tint(surface, k, mix3(silk, [0, 0, 0], 0.06 + 0.2 * thread + 0.3 * (1 - ridge)), cover);
        relief.data[k] =
          (relief.data[k] ?? 0) +
          cover * (Math.sqrt(clamp01(round.data[k] ?? 0)) * density * 0.42 + ridge * pitch * 0.28);
        surface.rough[k] = mix(surface.rough[k] ?? 0, 0.5, cover);
        surface.soft[k] = 0.4;
      }
    }
  });
}

export interface Pile {
  colour: Colour;
  /** Length of a hair in millimetres. */
  length: number;
  /** Locks of hair per square millimetre. */
  dense: number;
  /** Hairs in a lock, at least and at most. */
  hairs: readonly [number, number];
  /** True where the hair is the ground itself, false where it strays over something. */
  settle: boolean;
  /** Main direction in radians and how far hairs stray from it. */
  lie: number;
  stray: number;
}

/** Hairs of plush or mohair, laid from the back to the front; `where` thins them. */
export function growPile(surface: Surface, pile: Pile, where: Field, random: Random): void {
  const { width, height, density, relief } = surface;
  const area = (width * height) / density ** 2;
  const locks = Math.min(2600, Math.max(60, Math.round(area * pile.dense)));
  const swirl = noise(width, height, density * 9, 2, random);
  const span = pile.length * density;
  const broad = Math.max(0.5, density * 0.045);
  const reach = broad > 0.9 ? 1 : 0;
  for (let lock = 0; lock < locks; lock++) {
    const rootX = random.between(-span, width + span * 0.3);
    const rootY = random.between(-span, height + span * 0.3);
    const k0 =
      Math.min(height - 1, Math.max(0, Math.round(rootY))) * width +
      Math.min(width - 1, Math.max(0, Math.round(rootX)));
    if (!random.chance(where.data[k0] ?? 0)) continue;
    const lean = pile.lie + (swirl.data[k0] ?? 0) * 0.8 + random.normal() * pile.stray;
    const wave = random.between(0.02, 0.09) * (random.chance(0.5) ? 1 : -1);
    const rate = random.between(4, 9) / Math.max(8, span);
    const tone = random.between(0.6, 1.15);
    const hairs = Math.round(random.between(pile.hairs[0], pile.hairs[1]));
    const spread = density * random.between(0.25, 0.8);
    const rise = random.between(0, density * 0.5);
    for (let n = 0; n < hairs; n++) {
      let x = rootX + random.normal() * spread;
      let y = rootY + random.normal() * spread;
      let angle = lean + random.normal() * 0.16;
      const curl = (random.normal() * 0.5) / Math.max(10, span);
      const light = tone * random.between(0.72, 1.22);
      const phase = random.between(0, 0.8);
      const steps = Math.max(5, Math.round(span * random.between(0.55, 1.05)));
      for (let s = 0; s < steps; s++) {
        x += Math.cos(angle);
        y += Math.sin(angle);
        angle += curl + wave * Math.cos(s * rate * 6.28 + phase);
        const ix = Math.round(x);
        const iy = Math.round(y);
        if (ix < 1 || iy < 1 || ix >= width - 1 || iy >= height - 1) continue;
        const t = s / steps;
        const sheen = 1 + 0.22 * Math.sin(s * rate * 6.28 + phase + lean);
        const shade = light * sheen * (0.34 + 0.72 * Math.sqrt(t));
        for (let side = 0; side <= reach; side++) {
          const k = iy * width + ix + (side === 0 ? 0 : Math.abs(Math.cos(angle)) > 0.7 ? width : 1);
          const cover = Math.min(0.95, side === 0 ? broad + 0.35 : broad - 0.5) * (1 - t ** 6);
          tint(surface, k, [pile.colour[0] * shade, pile.colour[1] * shade, pile.colour[2] * shade], cover);
          relief.data[k] =
            (relief.data[k] ?? 0) +
            ((rise + 0.5 + t * 1.2 - (relief.data[k] ?? 0)) * (pile.settle ? cover * 0.6 : 0) +
              (pile.settle ? 0 : 0.9 * cover));
          surface.metal[k] = (surface.metal[k] ?? 0) * (1 - cover);
          surface.coat[k] = (surface.coat[k] ?? 0) * (1 - cover);
          surface.rough[k] = 0.85;
          surface.soft[k] = 0.6;
        }
      }
    }
  }
}

/** Frayed ends of thread standing out of an edge. */
export function fray(surface: Surface, inside: Field, colour: Colour, amount: number, random: Random): void {
  const { width, height, density } = surface;
  const reach = density * 0.8;
  const near = emptyField(width, height);
  for (let k = 0; k < near.data.length; k++)
    near.data[k] = Math.abs(inside.data[k] ?? 0) < reach * 0.5 ? 1 : 0;
  growPile(
    surface,
    {
      colour,
      length: 1.5 * amount + 0.4,
      dense: 0.4 * amount,
      hairs: [1, 2],
      settle: false,
      lie: random.between(0, 6),
      stray: 1.6,
    },
    near,
    random,
  );
}
