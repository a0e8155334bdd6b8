import { mirrored, type Room } from "./environment.ts";
import { blur, clamp01, type Field, mix, smoothstep } from "./field.ts";
import type { Surface } from "./surface.ts";

/** Linear light for each pixel. */
export interface Light {
  width: number;
  height: number;
  red: Float32Array;
  green: Float32Array;
  blue: Float32Array;
}

/** Where the eye is: slopes of the line of sight at the middle, and its distance in pixels. */
export interface Eye {
  x: number;
  y: number;
  distance: number;
}

/** How open each pixel is to the sky, from the hollows of two sizes. */
function openness(relief: Field, density: number): Float32Array {
  const near = blur(relief, Math.max(1.2, density * 0.16));
  const far = blur(relief, Math.max(4, density * 0.8));
  const out = new Float32Array(relief.data.length);
  for (let i = 0; i < out.length; i++) {
    const h = relief.data[i] ?? 0;
    const small = Math.max(0, (near.data[i] ?? 0) - h);
    const large = Math.max(0, (far.data[i] ?? 0) - h);
    out[i] = 1 / (1 + small * 0.55 + large * 0.2);
  }
  return out;
}

const STEPS = [1, 2, 3.2, 5, 7.5, 11, 16];

/** How much of the main light reaches a pixel past the relief round it. */
function lit(relief: Field, x: number, y: number, room: Room): number {
  const { width, height, data } = relief;
  const [lx, ly, lz] = room.light;
  const flat = Math.hypot(lx, ly) || 1e-6;
  const rise = lz / flat;
  const here = data[y * width + x] ?? 0;
  let light = 1;
  for (const step of STEPS) {
    const u = Math.round(x + (lx / flat) * step);
    const v = Math.round(y + (ly / flat) * step);
    if (u < 0 || v < 0 || u >= width || v >= height) break;
    const over = (data[v * width + u] ?? 0) - here - rise * step;
    if (over > -0.4) light = Math.min(light, 1 - smoothstep(-0.4, 0.9 + step * 0.12, over));
  }
  return light;
}

/** Lets the room's light fall on a surface. */
export function shade(surface: Surface, room: Room, eye: Eye): Light {
  const { width, height, relief } = surface;
  const n = width * height;
  const out: Light = {
    width,
    height,
    red: new Float32Array(n),
    green: new Float32Array(n),
    blue: new Float32Array(n),
  };
  const open = openness(relief, surface.density);
  const [lx, ly, lz] = room.light;
  const [cr, cg, cb] = room.lightColour;
  const [ar, ag, ab] = room.ambient;
  const seen = new Float32Array(3);
  const h = relief.data;
  for (let y = 0; y < height; y++) {
    const up = y > 0 ? -width : 0;
    const down = y < height - 1 ? width : 0;
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const left = x > 0 ? -1 : 0;
      const right = x < width - 1 ? 1 : 0;
      let nx = -((h[i + right] ?? 0) - (h[i + left] ?? 0)) / 2;
      let ny = -((h[i + down] ?? 0) - (h[i + up] ?? 0)) / 2;
      const nl = 1 / Math.sqrt(nx * nx + ny * ny + 1);
      nx *= nl;
      ny *= nl;
      const nz = nl;
      let vx = eye.x + (width / 2 - x) / eye.distance;
      let vy = eye.y + (height / 2 - y) / eye.distance;
      const vl = 1 / Math.sqrt(vx * vx + vy * vy + 1);
      vx *= vl;
      vy *= vl;
      const vz = vl;
      const nv = Math.max(0.02, nx * vx + ny * vy + nz * vz);
      const wrap = (surface.soft[i] ?? 0) * 0.6;
      const ao = open[i] ?? 0;
      const shadow = lit(relief, x, y, room);
      const lambert = Math.max(0, (nx * lx + ny * ly + nz * lz + wrap) / (1 + wrap));
      const direct = lambert * mix(shadow, 1, (surface.soft[i] ?? 0) * 0.35) * room.lightStrength;
      const skyward = ao * (0.75 + 0.25 * nz);
      const metal = surface.metal[i] ?? 0;
      const scatter = 1 - metal;
      const r = surface.red[i] ?? 0;
      const g = surface.green[i] ?? 0;
      const b = surface.blue[i] ?? 0;
      let outR = scatter * r * (direct * cr + skyward * ar);
      let outG = scatter * g * (direct * cg + skyward * ag);
      let outB = scatter * b * (direct * cb + skyward * ab);
      const fresnel = (1 - nv) ** 5;
      const rough = surface.rough[i] ?? 0;
      if (metal > 0.01 || rough < 0.7) {
        mirrored(room, 2 * nv * nx - vx, 2 * nv * ny - vy, rough, seen);
        const occlude = mix(ao, 1, 0.2) * mix(0.55 + 0.45 * shadow, 1, 0.3);
        const plain = (0.04 + 0.6 * fresnel) * scatter * (1 - rough);
        outR += (seen[0] ?? 0) * occlude * (metal * (r + (1 - r) * fresnel) + plain);
        outG += (seen[1] ?? 0) * occlude * (metal * (g + (1 - g) * fresnel) + plain);
        outB += (seen[2] ?? 0) * occlude * (metal * (b + (1 - b) * fresnel) + plain);
      }
      const coat = surface.coat[i] ?? 0;
      if (coat > 0.01) {
        mirrored(room, 2 * nv * nx - vx, 2 * nv * ny - vy, surface.coatRough[i] ?? 0, seen);
        const strength = coat * (0.045 + 0.9 * fresnel) * mix(ao, 1, 0.4);
        outR += (seen[0] ?? 0) * strength;
        outG += (seen[1] ?? 0) * strength;
        outB += (seen[2] ?? 0) * strength;
      }
      out.red[i] = outR;
      out.green[i] = outG;
      out.blue[i] = outB;
    }
  }
  return out;
}

/** Softens light within cloth and paper, where it creeps sideways. */
export function creep(light: Light, surface: Surface, sigma: number): void {
  for (const channel of ["red", "green", "blue"] as const) {
    const spread = blur({ width: light.width, height: light.height, data: light[channel] }, sigma);
    const data = light[channel];
    for (let i = 0; i < data.length; i++)
      data[i] = mix(data[i] ?? 0, spread.data[i] ?? 0, clamp01((surface.soft[i] ?? 0) * 0.45));
  }
}
