import { blur, clamp01, type Field, grain, mix, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";
import type { Light } from "./shade.ts";

/** How a photograph looks at a surface. Millimetres on the surface become pixels of the photograph. */
export interface View {
  width: number;
  height: number;
  /** Pixels of the photograph per millimetre at the middle of the mark. */
  scale: number;
  /** Degrees clockwise that the mark is turned in the photograph. */
  roll: number;
  /** Slopes of the surface away from the camera, right and down. */
  tiltX: number;
  tiltY: number;
  /** Middle of the mark in the photograph. */
  x: number;
  y: number;
}

type Matrix = readonly [number, number, number, number, number, number, number, number, number];

const DISTANCE = 2.6;

/** Millimetres about the middle of the mark, to pixels of the photograph (homogeneous). */
export function projection(view: View): Matrix {
  const c = Math.cos((view.roll * Math.PI) / 180) * view.scale;
  const s = Math.sin((view.roll * Math.PI) / 180) * view.scale;
  const d = DISTANCE * Math.max(view.width, view.height);
  const cx = Math.sqrt(1 - view.tiltX ** 2);
  const cy = Math.sqrt(1 - view.tiltY ** 2);
  const wX = (view.tiltX * c + view.tiltY * s) / d;
  const wY = (-view.tiltX * s + view.tiltY * c) / d;
  return [
    cx * c + view.x * wX,
    -cx * s + view.x * wY,
    view.x,
    cy * s + view.y * wX,
    cy * c + view.y * wY,
    view.y,
    wX,
    wY,
    1,
  ];
}

function invert(m: Matrix): Matrix {
  const [a, b, c, d, e, f, g, h, i] = m;
  const A = e * i - f * h;
  const B = c * h - b * i;
  const C = b * f - c * e;
  const det = a * A + d * B + g * C;
  return [
    A / det,
    B / det,
    C / det,
    (f * g - d * i) / det,
    (a * i - c * g) / det,
    (c * d - a * f) / det,
    (d * h - e * g) / det,
    (b * g - a * h) / det,
    (a * e - b * d) / det,
  ];
}

export function project(m: Matrix, x: number, y: number): [number, number] {
  const w = m[6] * x + m[7] * y + m[8];
  return [(m[0] * x + m[1] * y + m[2]) / w, (m[3] * x + m[4] * y + m[5]) / w];
}

/** The part of the surface that a view sees, in millimetres about the middle of the mark. */
export function seenBox(view: View): { left: number; top: number; right: number; bottom: number } {
  const back = invert(projection(view));
  const corners = [
    project(back, 0, 0),
    project(back, view.width, 0),
    project(back, 0, view.height),
    project(back, view.width, view.height),
  ];
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** Where the middle of the mark lies on the surface, and its pixels per millimetre. */
export interface Origin {
  x: number;
  y: number;
  density: number;
}

/** How the picture is taken, apart from where from. */
export interface Exposure {
  /** Stops from what the meter says. */
  stops: number;
  /** Red and blue against green. */
  warmth: number;
  vignette: number;
  noise: number;
  /** Blur at the middle, in pixels. */
  softness: number;
  /** Growth of blur away from the plane of focus. */
  shallow: number;
  contrast: number;
  saturation: number;
}

interface Picture {
  width: number;
  height: number;
  red: Float32Array;
  green: Float32Array;
  blue: Float32Array;
}

const CHANNELS = ["red", "green", "blue"] as const;

function take(light: Light, view: View, at: Origin): Picture {
  const { width, height } = view;
  const back = invert(projection(view));
  const n = width * height;
  const out: Picture = {
    width,
    height,
    red: new Float32Array(n),
    green: new Float32Array(n),
    blue: new Float32Array(n),
  };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const px = x + 0.5;
      const py = y + 0.5;
      const w = back[6] * px + back[7] * py + back[8];
      const mx = (back[0] * px + back[1] * py + back[2]) / w;
      const my = (back[3] * px + back[4] * py + back[5]) / w;
      const u = Math.min(light.width - 2.001, Math.max(0, mx * at.density + at.x));
      const v = Math.min(light.height - 2.001, Math.max(0, my * at.density + at.y));
      const i = Math.floor(u);
      const j = Math.floor(v);
      const fx = u - i;
      const fy = v - j;
      const k = j * light.width + i;
      for (const channel of CHANNELS) {
        const s = light[channel];
        const p = (s[k] ?? 0) + ((s[k + 1] ?? 0) - (s[k] ?? 0)) * fx;
        const q =
          (s[k + light.width] ?? 0) + ((s[k + light.width + 1] ?? 0) - (s[k + light.width] ?? 0)) * fx;
        out[channel][y * width + x] = p + (q - p) * fy;
      }
    }
  }
  return out;
}

function focus(picture: Picture, view: View, exposure: Exposure, random: Random): void {
  const { width, height } = picture;
  const near = exposure.softness;
  const far = 1.2 + exposure.softness + exposure.shallow * 3;
  const angle = Math.atan2(view.tiltY, view.tiltX) + random.between(-0.4, 0.4);
  const ax = Math.cos(angle);
  const ay = Math.sin(angle);
  const offset = random.between(-0.06, 0.06) * width;
  for (const channel of CHANNELS) {
    const field: Field = { width, height, data: picture[channel] };
    const sharp = blur(field, near).data;
    const soft = blur(field, far).data;
    const out = new Float32Array(field.data.length);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const away = Math.abs((x - view.x) * ax + (y - view.y) * ay + offset) / (width * 0.5);
        const t = clamp01(exposure.shallow * smoothstep(0.3, 1.25, away));
        const i = y * width + x;
        out[i] = mix(sharp[i] ?? 0, soft[i] ?? 0, t);
      }
    }
    picture[channel] = out;
  }
}

/** A shoulder for the highlights, straight in the middle, a small toe. */
function tone(x: number): number {
  const a = Math.max(0, x);
  return (a * (2.51 * a + 0.03)) / (a * (2.43 * a + 0.59) + 0.14);
}

function meter(picture: Picture, view: View): number {
  let sum = 0;
  let count = 0;
  const { red, green, blue } = picture;
  for (let y = 0; y < picture.height; y += 3) {
    for (let x = 0; x < picture.width; x += 3) {
      const weight = Math.exp(
        -(((x - view.x) / (view.width * 0.33)) ** 2) - ((y - view.y) / (view.height * 0.33)) ** 2,
      );
      const i = y * picture.width + x;
      sum += weight * Math.log(1e-3 + 0.3 * (red[i] ?? 0) + 0.59 * (green[i] ?? 0) + 0.11 * (blue[i] ?? 0));
      count += weight;
    }
  }
  return Math.exp(sum / count);
}

function sharpen(data: Float32Array, width: number, height: number, amount: number): Float32Array {
  const soft = blur({ width, height, data }, 1.1).data;
  const out = new Float32Array(data.length);
  for (let i = 0; i < data.length; i++) out[i] = (data[i] ?? 0) + ((data[i] ?? 0) - (soft[i] ?? 0)) * amount;
  return out;
}

function toByte(value: number, contrast: number, stray: number): number {
  return Math.round(clamp01(0.5 + (value - 0.5) * contrast + stray) * 255);
}

/** Takes the photograph: 8-bit RGB, row by row. */
export function expose(light: Light, view: View, exposure: Exposure, at: Origin, random: Random): Uint8Array {
  const picture = take(light, view, at);
  focus(picture, view, exposure, random);
  const { width, height } = picture;
  const metered = meter(picture, view);
  const gain = (mix(0.175, metered, 0.36) / Math.max(0.01, metered)) * 2 ** exposure.stops;
  const fine = grain(width, height, random);
  const coarse = blur(grain(width, height, random), 0.8);
  const redSpecks = blur(grain(width, height, random), 1.6);
  const blueSpecks = blur(grain(width, height, random), 1.6);
  const develop = (data: Float32Array, balance: number): Float32Array => {
    const out = new Float32Array(data.length);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const i = y * width + x;
        const r2 = ((x - width / 2) ** 2 + (y - height / 2) ** 2) / ((width ** 2 + height ** 2) / 4);
        out[i] = tone((data[i] ?? 0) * gain * balance * (1 - exposure.vignette * r2)) ** (1 / 2.2);
      }
    }
    return sharpen(out, width, height, 0.45);
  };
  const red = develop(picture.red, 1 + exposure.warmth);
  const green = develop(picture.green, 1);
  const blue = develop(picture.blue, 1 - exposure.warmth);
  const bytes = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) {
    const r = red[i] ?? 0;
    const g = green[i] ?? 0;
    const b = blue[i] ?? 0;
    const luma = 0.3 * r + 0.59 * g + 0.11 * b;
    const dark = (1.3 - luma * 0.8) * exposure.noise;
    const speck = ((fine.data[i] ?? 0) * 0.5 + (coarse.data[i] ?? 0) * 1.6) * dark;
    bytes[i * 3] = toByte(
      mix(luma, r, exposure.saturation),
      exposure.contrast,
      speck + (redSpecks.data[i] ?? 0) * dark * 1.4,
    );
    bytes[i * 3 + 1] = toByte(mix(luma, g, exposure.saturation), exposure.contrast, speck);
    bytes[i * 3 + 2] = toByte(
      mix(luma, b, exposure.saturation),
      exposure.contrast,
      speck + (blueSpecks.data[i] ?? 0) * dark * 1.4,
    );
  }
  return bytes;
}
