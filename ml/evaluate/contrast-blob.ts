import type { Box } from "../overlap.ts";
import { cut, decode } from "../preprocess.ts";
import { letterboxOf } from "../whole.ts";

/** The photograph is looked at in so many pixels a side. */
const SIDE = 96;
/** Pixels over which contrast is gathered, either way. */
const REACH = 3;
/** A pixel belongs to a blob when its contrast is above this quantile. */
const QUANTILE = 0.8;

/**
 * A baseline without learning: the largest blob of local contrast. The size of the grey value's slope, averaged over
 * a neighbourhood, is cut at a quantile; of the connected parts, the one with most contrast, counted less the farther
 * it lies from the middle, is taken for the mark.
 */
export async function contrastBlob(photograph: string): Promise<Box> {
  const patch = await decode(photograph);
  const picture = cut(patch, 0, SIDE);
  const { across, down } = letterboxOf(patch);
  const left = Math.ceil((SIDE * (1 - across)) / 2);
  const top = Math.ceil((SIDE * (1 - down)) / 2);
  const energy = smooth(slopes(picture, left, top));
  const seen = energy.filter((_, i) => isBetween(i % SIDE, left) && isBetween(Math.floor(i / SIDE), top));
  const limit = [...seen].sort((a, b) => a - b)[Math.floor(seen.length * QUANTILE)] ?? 0;
  const blob = heaviest(blobs(energy, limit), energy);
  const columns = blob.map((i) => i % SIDE);
  const rows = blob.map((i) => Math.floor(i / SIDE));
  const scale = patch.square.side / SIDE;
  const x = Math.min(...columns);
  const y = Math.min(...rows);
  return {
    x: patch.square.centreX - patch.square.side / 2 + x * scale,
    y: patch.square.centreY - patch.square.side / 2 + y * scale,
    width: (Math.max(...columns) + 1 - x) * scale,
    height: (Math.max(...rows) + 1 - y) * scale,
  };
}

const isBetween = (at: number, margin: number): boolean => at >= margin && at < SIDE - margin;

function slopes(picture: Float32Array, left: number, top: number): Float32Array {
  return picture.map((_, i) => {
    const [x, y] = [i % SIDE, Math.floor(i / SIDE)];
    if (!isBetween(x, left + 1) || !isBetween(y, top + 1)) return 0;
    const dx = (picture[i + 1] ?? 0) - (picture[i - 1] ?? 0);
    const dy = (picture[i + SIDE] ?? 0) - (picture[i - SIDE] ?? 0);
    return Math.hypot(dx, dy);
  });
}

function smooth(values: Float32Array): Float32Array {
  const along = (from: Float32Array, step: number) =>
    from.map((_, i) => {
      let sum = 0;
      for (let k = -REACH; k <= REACH; k++) sum += from[i + k * step] ?? 0;
      return sum / (2 * REACH + 1);
    });
  return along(along(values, 1), SIDE);
}

/** The connected parts above a limit, as lists of pixels. */
function blobs(energy: Float32Array, limit: number): number[][] {
  const seen = new Uint8Array(energy.length);
  const found: number[][] = [];
  for (let start = 0; start < energy.length; start++) {
    if (seen[start] || (energy[start] ?? 0) <= limit) continue;
    const blob = [start];
    seen[start] = 1;
    for (const i of blob)
      for (const next of [i - 1, i + 1, i - SIDE, i + SIDE]) {
        const wraps = Math.abs((next % SIDE) - (i % SIDE)) > 1;
        if (wraps || seen[next] !== 0 || (energy[next] ?? 0) <= limit) continue;
        seen[next] = 1;
        blob.push(next);
      }
    found.push(blob);
  }
  return found;
}

function heaviest(parts: readonly number[][], energy: Float32Array): number[] {
  const weigh = (part: readonly number[]) => {
    let sum = 0;
    for (const i of part) {
      const aside = Math.hypot((i % SIDE) - SIDE / 2, Math.floor(i / SIDE) - SIDE / 2) / SIDE;
      sum += (energy[i] ?? 0) * Math.exp(-4 * aside * aside);
    }
    return sum;
  };
  const whole = Array.from({ length: SIDE * SIDE }, (_, i) => i);
  return parts.reduce((best, part) => (weigh(part) > weigh(best) ? part : best), parts[0] ?? whole);
}
