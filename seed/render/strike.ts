import { blur, clamp01, emptyField, type Field, mix, moved, noise, smoothstep } from "./field.ts";
import type { Random } from "./random.ts";

export interface StrikeWish {
  /** `relief`: the ground is sunk and the device stands; `incuse`: the device is sunk; `cast`: all stands proud. */
  style: "relief" | "incuse" | "cast";
  /** Millimetres. */
  depth: number;
  /** 0 fresh, 1 nearly gone. */
  wear: number;
  /** 0 even, 1 half of it not struck. */
  partial: number;
  doubled: boolean;
  /** Roundness of the edges in millimetres. */
  edge: number;
  /** Metal or clay thrown up round a stamp, as a share of the depth. */
  lip: number;
}

export interface Strike {
  /** Pixels, to be added to the surface. */
  relief: Field;
  /** 0 to 1: within the sunk parts. */
  sunk: Field;
  /** 0 to 1: strength of the impression. */
  strength: Field;
}

/** How strongly a stamp bit at each pixel: uneven pressure, and wear in patches. */
function bite(field: Field, wish: StrikeWish, x: number, y: number, radius: number, random: Random): Field {
  const { width, height } = field;
  const patches = noise(width, height, radius * 0.9, 3, random);
  const angle = random.between(0, Math.PI * 2);
  const out = emptyField(width, height);
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const k = j * width + i;
      const along = ((i - x) * Math.cos(angle) + (j - y) * Math.sin(angle)) / radius;
      const tilt =
        1 -
        wish.partial *
          smoothstep(0.05, 1.05, along * 0.9 + (patches.data[k] ?? 0) * 0.18 + wish.partial * 0.35);
      const rubbed = 1 - wish.wear * (0.62 + 0.5 * (patches.data[k] ?? 0));
      out.data[k] = clamp01(tilt) * Math.max(0.06, Math.min(1, rubbed));
    }
  }
  return out;
}

/** The relief that a stamp, punch, graver or mould leaves, from its two masks. */
export function strike(
  field: Field,
  device: Field,
  wish: StrikeWish,
  density: number,
  x: number,
  y: number,
  radius: number,
  random: Random,
): Strike {
  const { width, height } = device;
  const depth = wish.depth * density;
  const edge = Math.max(0.55, wish.edge * density * (1 + wish.wear));
  const strength = bite(device, wish, x, y, radius, random);
  const sharp = blur(device, edge);
  const worn = blur(device, edge * 1.8 + 0.4);
  const ground = blur(field, edge * 1.1);
  const relief = emptyField(width, height);
  const sunk = emptyField(width, height);
  const hasGround = wish.style === "relief";
  const rimSource = hasGround ? ground : sharp;
  const rim = blur(rimSource, Math.max(1.5, depth * 0.7));
  const ghost = wish.doubled
    ? moved(
        hasGround ? ground : sharp,
        density * random.between(-0.35, 0.35),
        density * random.between(0.12, 0.35),
      )
    : undefined;
  for (let i = 0; i < relief.data.length; i++) {
    const s = strength.data[i] ?? 0;
    const d = mix(sharp.data[i] ?? 0, worn.data[i] ?? 0, clamp01(1.2 - s));
    const g = ground.data[i] ?? 0;
    let low = 0;
    if (wish.style === "relief") low = g * (1 - 0.88 * d * mix(1, 0.85, wish.wear));
    else if (wish.style === "incuse") low = d;
    else low = -d;
    if (ghost) low = Math.max(low, (ghost.data[i] ?? 0) * 0.3);
    const lip =
      wish.lip *
      Math.max(0, (rim.data[i] ?? 0) - (rimSource.data[i] ?? 0)) *
      (1 - (rimSource.data[i] ?? 0)) *
      (1 - 0.7 * wish.wear);
    relief.data[i] = depth * s * (lip * 1.6 - low);
    sunk.data[i] = clamp01(low) * s;
  }
  return { relief, sunk, strength };
}
