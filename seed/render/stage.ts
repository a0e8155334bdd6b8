import { emptyField, type Field, noise, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";

/** The thing that bears the mark: where it ends and how it bulges. Millimetres about the mark. */
export type Stage =
  | { kind: "full"; bulge: number }
  /** A handle, blade or strap: half its breadth, how much it widens along its length, and roundness of its edges. */
  | { kind: "bar"; half: number; flare: number; round: number; bulge: number }
  /** A plate or base: its middle from the mark, its radius, turned rings about the middle. */
  | { kind: "disc"; x: number; y: number; radius: number; round: number; rings: number; bulge: number }
  /** A sheet of given half sizes, with rough edges. */
  | {
      kind: "sheet";
      halfWidth: number;
      halfHeight: number;
      corner: number;
      round: number;
      ragged: number;
      bulge: number;
    }
  /** A wall curving away to both sides, as of a jug. */
  | { kind: "wall"; radius: number };

export interface Staged {
  /** 1 on the thing, 0 beside it. */
  cover: Field;
  /** Shape of the thing in pixels. */
  relief: Field;
  /** Distance inwards from the edge in pixels; large where no edge is near. */
  inside: Field;
}

/** Lays out a stage on a surface whose mark is at (x, y). */
export function layStage(
  stage: Stage,
  width: number,
  height: number,
  density: number,
  x: number,
  y: number,
  random: Random,
): Staged {
  const cover = emptyField(width, height, 1);
  const relief = emptyField(width, height);
  const inside = emptyField(width, height, 1e4);
  const wobble =
    stage.kind === "sheet" && stage.ragged > 0 ? noise(width, height, density * 1.6, 4, random) : undefined;
  const lean = random.between(-0.02, 0.02);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const u = (i - x) / density;
      const v = (j - y) / density;
      let distance = 1e4;
      let shape = 0;
      let round = 0;
      switch (stage.kind) {
        case "full":
          shape = -stage.bulge * (u * u + v * v) * 0.01;
          break;
        case "wall":
          shape = Math.sqrt(Math.max(0.04 * stage.radius ** 2, stage.radius ** 2 - u * u)) - stage.radius;
          break;
        case "bar": {
          const half = stage.half * (1 + stage.flare * u * 0.02);
          distance = half - Math.abs(v + lean * u);
          round = stage.round;
          shape = -stage.bulge * (v / half) ** 2;
          break;
        }
        case "disc": {
          const r = Math.hypot(u - stage.x, v - stage.y);
          distance = stage.radius - r;
          round = stage.round;
          shape =
            stage.rings *
              (Math.sin(r * 9) * 0.004 + Math.sin(r * 3.1 + 1) * 0.004 + Math.sin(r * 23) * 0.002) -
            stage.bulge * (r / stage.radius) ** 2;
          break;
        }
        case "sheet": {
          const qx = Math.abs(u) - stage.halfWidth + stage.corner;
          const qy = Math.abs(v) - stage.halfHeight + stage.corner;
          distance =
            stage.corner - Math.hypot(Math.max(0, qx), Math.max(0, qy)) - Math.min(0, Math.max(qx, qy));
          if (wobble) distance += (wobble.data[k] ?? 0) * stage.ragged;
          round = stage.round;
          shape = -stage.bulge * ((u / stage.halfWidth) ** 2 + (v / stage.halfHeight) ** 2) * 0.5;
          break;
        }
      }
      const d = distance * density;
      inside.data[k] = d;
      cover.data[k] = smoothstep(-0.7, 0.7, d);
      if (round > 0 && distance < round) {
        const t = Math.max(0, distance);
        shape += Math.sqrt(Math.max(0, round ** 2 - (round - t) ** 2)) - round;
      }
      relief.data[k] = shape * density;
    }
  }
  return { cover, relief, inside };
}
