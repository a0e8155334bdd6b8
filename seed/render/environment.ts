import { blur, emptyField, mix, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import type { Colour } from "./surface.ts";

const SIZE = 128;
const LEVELS = [0, 2.2, 6, 13, 26];

/** The room above the table, as seen in a polished surface: a disc of directions, at five roughnesses. */
export interface Room {
  /** Unit vector to the main light. */
  light: Colour;
  lightColour: Colour;
  lightStrength: number;
  ambient: Colour;
  levels: { red: Float32Array; green: Float32Array; blue: Float32Array }[];
}

export type Lighting = "window" | "softbox" | "lamp" | "overcast" | "flash" | "raking" | "dim";

interface Panel {
  x: number;
  y: number;
  a: number;
  b: number;
  turn: number;
  strength: number;
  soft: number;
  bars: boolean;
  colour: Colour;
}

const WARM: Colour = [1.08, 1, 0.86];
const COOL: Colour = [0.93, 1, 1.09];
const PLAIN: Colour = [1, 1, 1];

/** The bars of a window are dark. */
function besideBar(distance: number): number {
  return smoothstep(0.03, 0.09, Math.abs(distance));
}

function panelLight(panel: Panel, x: number, y: number): number {
  const c = Math.cos(panel.turn);
  const s = Math.sin(panel.turn);
  const u = ((x - panel.x) * c + (y - panel.y) * s) / panel.a;
  const v = (-(x - panel.x) * s + (y - panel.y) * c) / panel.b;
  const inside =
    smoothstep(1 + panel.soft, 1 - panel.soft, Math.abs(u)) *
    smoothstep(1 + panel.soft, 1 - panel.soft, Math.abs(v));
  if (inside === 0 || !panel.bars) return inside;
  return inside * besideBar(u) * besideBar(v + 0.33) * besideBar(v - 0.33);
}

function panelsFor(lighting: Lighting, angle: number, reach: number, random: Random): [Panel, ...Panel[]] {
  const x = Math.cos(angle) * reach;
  const y = Math.sin(angle) * reach;
  const base = { x, y, turn: angle + random.between(-0.3, 0.3), soft: 0.12, bars: false, colour: PLAIN };
  const away: Panel = {
    ...base,
    x: -x * 0.9,
    y: -y * 0.9,
    a: 0.28,
    b: 0.5,
    strength: random.between(0.3, 0.9),
    soft: 0.6,
  };
  switch (lighting) {
    case "window":
      return [
        { ...base, a: 0.26, b: 0.36, strength: random.between(4, 6), soft: 0.05, bars: true, colour: COOL },
        away,
      ];
    case "softbox":
      return [
        { ...base, a: random.between(0.26, 0.4), b: 0.46, strength: random.between(2.2, 3), soft: 0.3 },
        away,
      ];
    case "lamp":
      return [
        { ...base, a: 0.12, b: 0.12, strength: 14, soft: 0.5, colour: WARM },
        { ...away, strength: 0.4 },
      ];
    case "overcast":
      return [{ ...base, a: 0.5, b: 0.4, strength: random.between(1.1, 1.7), soft: 0.8, colour: COOL }];
    case "flash":
      return [
        { ...base, x: x * 0.25, y: y * 0.25, a: 0.07, b: 0.05, strength: 26, soft: 0.6 },
        { ...away, strength: 0.25 },
      ];
    case "raking":
      return [
        {
          ...base,
          x: Math.cos(angle) * 0.88,
          y: Math.sin(angle) * 0.88,
          a: 0.1,
          b: 0.4,
          strength: 9,
          soft: 0.2,
          colour: WARM,
        },
        { ...away, strength: 0.2 },
      ];
    case "dim":
      return [{ ...base, a: 0.2, b: 0.2, strength: 3, soft: 0.5, colour: WARM }];
  }
}

/** A room with its lights, walls and the photographer's own dark shape in the middle of what is mirrored. */
export function furnishRoom(lighting: Lighting, random: Random): Room {
  const angle = random.chance(0.7) ? random.between(-2.6, -0.5) : random.between(-Math.PI, Math.PI);
  const reach = lighting === "raking" ? 0.88 : random.between(0.38, 0.66);
  const panels = panelsFor(lighting, angle, reach, random);
  const wall = { overcast: 0.4, softbox: 0.34, window: 0.3, lamp: 0.2, flash: 0.18, raking: 0.13, dim: 0.16 }[
    lighting
  ];
  const [main] = panels;
  const red = emptyField(SIZE, SIZE);
  const green = emptyField(SIZE, SIZE);
  const blue = emptyField(SIZE, SIZE);
  const tilt = random.between(0, Math.PI * 2);
  const tableWarmth = random.between(0, 0.5);
  const shapes = Array.from({ length: 9 }, () => ({
    x: random.between(-0.9, 0.9),
    y: random.between(-0.9, 0.9),
    r: random.between(0.1, 0.35),
    v: random.between(-0.7, 0.9),
  }));
  const camera = {
    x: random.between(-0.06, 0.06),
    y: random.between(-0.05, 0.12),
    r: random.between(0.1, 0.2),
  };
  for (let j = 0; j < SIZE; j++) {
    for (let i = 0; i < SIZE; i++) {
      const x = (i / (SIZE - 1)) * 2 - 1;
      const y = (j / (SIZE - 1)) * 2 - 1;
      const slope = Math.cos(tilt) * x + Math.sin(tilt) * y;
      let level = wall * (1 + 0.75 * slope);
      for (const shape of shapes)
        level *= 1 + shape.v * smoothstep(shape.r, shape.r * 0.6, Math.hypot(x - shape.x, y - shape.y));
      level *= mix(
        1,
        0.35,
        smoothstep(camera.r, camera.r * 0.5, Math.hypot(x - camera.x, (y - camera.y) * 0.8)),
      );
      const rim = smoothstep(0.8, 1, Math.hypot(x, y));
      level *= mix(1, 0.6, rim);
      let [r, g, b] = [level * (1 + 0.12 * tableWarmth * rim), level, level * (1 - 0.25 * tableWarmth * rim)];
      for (const panel of panels) {
        const add = panelLight(panel, x, y) * panel.strength;
        r += add * panel.colour[0];
        g += add * panel.colour[1];
        b += add * panel.colour[2];
      }
      const k = j * SIZE + i;
      red.data[k] = r;
      green.data[k] = g;
      blue.data[k] = b;
    }
  }
  const lx = main.x;
  const ly = main.y;
  const bend = Math.min(0.93, Math.hypot(lx, ly));
  const lz = Math.sqrt(1 - bend * bend);
  const strength = {
    overcast: 0.55,
    softbox: 0.95,
    window: 1.05,
    lamp: 1.25,
    flash: 1.2,
    raking: 1.7,
    dim: 0.75,
  }[lighting];
  return {
    light: [lx, ly, lz],
    lightColour: main.colour,
    lightStrength: strength,
    ambient: [wall * 1.35, wall * 1.35, wall * 1.38],
    levels: LEVELS.map((sigma) => {
      return { red: blur(red, sigma).data, green: blur(green, sigma).data, blue: blur(blue, sigma).data };
    }),
  };
}

/** The value between four neighbours of the disc. */
function between(p: Float32Array, k: number, fx: number, fy: number): number {
  return (
    (p[k] ?? 0) * ((1 - fx) * (1 - fy)) +
    (p[k + 1] ?? 0) * (fx * (1 - fy)) +
    (p[k + SIZE] ?? 0) * ((1 - fx) * fy) +
    (p[k + SIZE + 1] ?? 0) * (fx * fy)
  );
}

/** What is mirrored in a direction, written into `out`; x, y within the unit disc. */
export function mirrored(room: Room, x: number, y: number, roughness: number, out: Float32Array): void {
  const level = Math.min(3.999, Math.max(0, roughness * 4.4));
  const low = Math.floor(level);
  const t = level - low;
  const u = Math.min(SIZE - 2, Math.max(0, (x * 0.5 + 0.5) * (SIZE - 1)));
  const v = Math.min(SIZE - 2, Math.max(0, (y * 0.5 + 0.5) * (SIZE - 1)));
  const i = Math.floor(u);
  const j = Math.floor(v);
  const fx = u - i;
  const fy = v - j;
  const k = j * SIZE + i;
  const a = room.levels[low];
  const b = room.levels[low + 1];
  if (!a || !b) throw new Error(`roughness: must be 0 to 1. Received ${roughness}.`);
  out[0] = between(a.red, k, fx, fy) * (1 - t) + between(b.red, k, fx, fy) * t;
  out[1] = between(a.green, k, fx, fy) * (1 - t) + between(b.green, k, fx, fy) * t;
  out[2] = between(a.blue, k, fx, fy) * (1 - t) + between(b.blue, k, fx, fy) * t;
}
