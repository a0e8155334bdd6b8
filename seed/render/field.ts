import type { Random } from "./random.ts";

/** A number for each pixel of a surface, row by row. */
export interface Field {
  width: number;
  height: number;
  data: Float32Array;
}

export function emptyField(width: number, height: number, value = 0): Field {
  const data = new Float32Array(width * height);
  if (value !== 0) data.fill(value);
  return { width, height, data };
}

export function smoothstep(low: number, high: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - low) / (high - low)));
  return t * t * (3 - 2 * t);
}

export const clamp01 = (x: number): number => Math.min(1, Math.max(0, x));
export const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

function addNoise(out: Field, cellX: number, cellY: number, gain: number, random: Random): void {
  const { width, height, data } = out;
  const columns = Math.ceil(width / cellX) + 3;
  const rows = Math.ceil(height / cellY) + 3;
  const grid = new Float32Array(columns * rows);
  for (let i = 0; i < grid.length; i++) grid[i] = random.next() * 2 - 1;
  const ox = random.next();
  const oy = random.next();
  const left = new Int32Array(width);
  const weight = new Float32Array(width);
  for (let x = 0; x < width; x++) {
    const u = x / cellX + ox;
    const i = Math.floor(u);
    left[x] = i;
    weight[x] = smoothstep(0, 1, u - i);
  }
  for (let y = 0; y < height; y++) {
    const v = y / cellY + oy;
    const j = Math.floor(v);
    const t = smoothstep(0, 1, v - j);
    const a = j * columns;
    const b = a + columns;
    const row = y * width;
    for (let x = 0; x < width; x++) {
      const i = left[x] ?? 0;
      const s = weight[x] ?? 0;
      const p = (grid[a + i] ?? 0) + ((grid[a + i + 1] ?? 0) - (grid[a + i] ?? 0)) * s;
      const q = (grid[b + i] ?? 0) + ((grid[b + i + 1] ?? 0) - (grid[b + i] ?? 0)) * s;
      data[row + x] = (data[row + x] ?? 0) + (p + (q - p) * t) * gain;
    }
  }
}

/** Smooth noise about 0, mostly within -1 to 1; `cell` is the size of its largest lumps in pixels. */
export function noise(
  width: number,
  height: number,
  cell: number,
  octaves: number,
  random: Random,
  stretch = 1,
): Field {
  const out = emptyField(width, height);
  let gain = 1;
  let size = cell;
  let sum = 0;
  for (let octave = 0; octave < octaves && size > 0.9; octave++) {
    addNoise(out, Math.max(1, size * stretch), Math.max(1, size), gain, random);
    sum += gain * gain;
    gain *= 0.52;
    size /= 2.03;
  }
  const scale = 1.25 / Math.sqrt(sum || 1);
  for (let i = 0; i < out.data.length; i++) out.data[i] = (out.data[i] ?? 0) * scale;
  return out;
}

/** A different value for every pixel, -1 to 1. */
export function grain(width: number, height: number, random: Random): Field {
  const out = emptyField(width, height);
  for (let i = 0; i < out.data.length; i++) out.data[i] = random.next() + random.next() - 1;
  return out;
}

function boxRows(
  source: Float32Array,
  target: Float32Array,
  width: number,
  height: number,
  radius: number,
): void {
  const scale = 1 / (radius * 2 + 1);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    let sum = (source[row] ?? 0) * radius;
    for (let i = 0; i < radius; i++) sum += source[row + Math.min(width - 1, i)] ?? 0;
    for (let x = 0; x < width; x++) {
      sum += source[row + Math.min(width - 1, x + radius)] ?? 0;
      target[row + x] = sum * scale;
      sum -= source[row + Math.max(0, x - radius)] ?? 0;
    }
  }
}

function transpose(source: Float32Array, target: Float32Array, width: number, height: number): void {
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) target[x * height + y] = source[y * width + x] ?? 0;
}

let scratch: [Float32Array, Float32Array] = [new Float32Array(0), new Float32Array(0)];

/** Two working rows of at least n numbers, kept between blurs: a picture is blurred some sixty times. */
function working(n: number): [Float32Array, Float32Array] {
  if (scratch[0].length < n) scratch = [new Float32Array(n), new Float32Array(n)];
  return [scratch[0].subarray(0, n), scratch[1].subarray(0, n)];
}

/** A Gaussian blur as three box blurs; below half a pixel it does nothing. */
export function blur(field: Field, sigma: number): Field {
  const { width, height } = field;
  const data = field.data.slice();
  if (sigma < 0.45) return { width, height, data };
  let [a, b] = working(data.length);
  a.set(data);
  const passes = sigma < 1.1 ? 1 : sigma < 2 ? 2 : 3;
  const radius = Math.max(1, Math.round((Math.sqrt((12 * sigma * sigma) / passes + 1) - 1) / 2));
  for (let pass = 0; pass < passes; pass++) {
    boxRows(a, b, width, height, radius);
    [a, b] = [b, a];
  }
  transpose(a, b, width, height);
  [a, b] = [b, a];
  for (let pass = 0; pass < passes; pass++) {
    boxRows(a, b, height, width, radius);
    [a, b] = [b, a];
  }
  transpose(a, data, height, width);
  return { width, height, data };
}

/** Lumps of one size and no direction, as of orange peel: mean 0, standard deviation 1. */
export function pebbles(width: number, height: number, radius: number, random: Random): Field {
  const source = grain(width, height, random);
  const fine = blur(source, Math.max(0.8, radius * 0.5));
  const coarse = blur(source, Math.max(1.6, radius * 1.25));
  let sum = 0;
  for (let i = 0; i < fine.data.length; i++) {
    fine.data[i] = (fine.data[i] ?? 0) - (coarse.data[i] ?? 0);
    sum += (fine.data[i] ?? 0) ** 2;
  }
  const scale = 1 / Math.sqrt(sum / fine.data.length || 1);
  for (let i = 0; i < fine.data.length; i++) fine.data[i] = (fine.data[i] ?? 0) * scale;
  return fine;
}

/** The same field moved by whole and part pixels. */
export function moved(field: Field, dx: number, dy: number): Field {
  const { width, height, data } = field;
  const out = emptyField(width, height);
  const ix = Math.floor(dx);
  const iy = Math.floor(dy);
  const fx = dx - ix;
  const fy = dy - iy;
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? 0 : (data[y * width + x] ?? 0);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const u = x - ix;
      const v = y - iy;
      out.data[y * width + x] =
        at(u, v) * (1 - fx) * (1 - fy) +
        at(u - 1, v) * fx * (1 - fy) +
        at(u, v - 1) * (1 - fx) * fy +
        at(u - 1, v - 1) * fx * fy;
    }
  }
  return out;
}

/** Draws a soft line of the given half width into a field by adding. */
export function addLine(
  field: Field,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  half: number,
  value: number,
): void {
  const { width, height, data } = field;
  const length = Math.hypot(x1 - x0, y1 - y0);
  if (length < 0.5) return;
  const nx = -(y1 - y0) / length;
  const ny = (x1 - x0) / length;
  const steep = Math.abs(y1 - y0) > Math.abs(x1 - x0);
  const from = steep ? Math.min(y0, y1) : Math.min(x0, x1);
  const to = steep ? Math.max(y0, y1) : Math.max(x0, x1);
  const reach = Math.ceil(half + 1);
  for (let m = Math.max(0, Math.floor(from)); m <= Math.min((steep ? height : width) - 1, to); m++) {
    const t = steep ? (m - y0) / (y1 - y0) : (m - x0) / (x1 - x0);
    const centre = steep ? x0 + (x1 - x0) * t : y0 + (y1 - y0) * t;
    const fade = Math.min(1, 4 * Math.min(t, 1 - t) + 0.15);
    for (let k = Math.floor(centre) - reach; k <= Math.floor(centre) + reach + 1; k++) {
      const x = steep ? k : m;
      const y = steep ? m : k;
      if (x < 0 || y < 0 || x >= width || y >= height) continue;
      const distance = Math.abs((x - x0) * nx + (y - y0) * ny);
      const cover = Math.max(0, Math.min(1, half + 0.5 - distance));
      if (cover > 0) data[y * width + x] = (data[y * width + x] ?? 0) + value * cover * fade;
    }
  }
}
