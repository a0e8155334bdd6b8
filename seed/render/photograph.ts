import sharp from "sharp";
import type { Placement } from "../designs/raster.ts";
import { expose, project, projection, seenBox } from "./camera.ts";
import type { Conditions } from "./conditions.ts";
import { furnishRoom } from "./environment.ts";
import type { Random } from "./random.ts";
import { layScale } from "./scale-strip.ts";
import { setScene } from "./set-scene.ts";
import { creep, shade } from "./shade.ts";
import type { Subject } from "./subject.ts";
import { layOver } from "./surface.ts";

export interface Photograph {
  webp: Buffer;
  width: number;
  height: number;
  /** The mark's box in pixels, as it stands when the picture is turned about the box's centre. */
  region: { x: number; y: number; width: number; height: number };
  /** Degrees clockwise that bring the mark upright. */
  turn: number;
  pixelsPerMillimetre: number;
}

const OVERSAMPLE = 1.25;

/** A picture too full of fine detail for its bytes is softened a little before it is coarsened more. */
const STAGES = [
  { soften: 0, least: 36 },
  { soften: 0.55, least: 32 },
  { soften: 0.8, least: 28 },
  { soften: 1.1, least: 24 },
  { soften: 1.5, least: 20 },
] as const;

/** WebP as good as fits the number of bytes, or the coarsest of the stages where nothing fits. */
async function squeeze(rgb: Uint8Array, width: number, height: number, bytes: number): Promise<Buffer> {
  let best: Buffer = Buffer.alloc(0);
  for (const { soften, least } of STAGES) {
    const whole = sharp(rgb, { raw: { width, height, channels: 3 } });
    const picture = soften > 0 ? whole.blur(soften) : whole;
    const encode = (quality: number): Promise<Buffer> =>
      picture.clone().webp({ quality, effort: 4, smartSubsample: true }).toBuffer();
    best = await encode(least);
    if (best.length > bytes) continue;
    let low: number = least;
    let high = 90;
    while (high - low > 4) {
      const quality = Math.round((low + high) / 2);
      const webp = await encode(quality);
      if (webp.length <= bytes) {
        best = webp;
        low = quality;
      } else high = quality;
    }
    return best;
  }
  return best;
}

/** Millimetres below the mark at which a scale lies free of its label or button. */
function clearance(subject: Subject): number {
  const { width, height } = subject.design;
  if (subject.stage === "sheet") return Math.min(width, height) * 0.2 + 1.8;
  if (subject.stage === "button") return Math.max(width, height) * 0.12 + 0.8;
  return Math.max(0.8, height * 0.16, width * 0.06);
}

/**
 * The box that holds the mark once the photograph is turned upright about the box's centre, in whole pixels of the
 * photograph as it stands; an upright one ends at the picture's edges.
 */
export function frameMark(subject: Subject, { view, lean }: Conditions, turn: number): Photograph["region"] {
  const forward = projection(view);
  const leaning = (lean * Math.PI) / 180;
  const turned = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turned), Math.sin(turned)];
  const corners = [
    [-1, -1],
    [1, -1],
    [-1, 1],
    [1, 1],
  ].map(([sx = 0, sy = 0]) => {
    const x = (sx * subject.design.width) / 2;
    const y = (sy * subject.design.height) / 2;
    const seen = project(
      forward,
      x * Math.cos(leaning) - y * Math.sin(leaning),
      x * Math.sin(leaning) + y * Math.cos(leaning),
    );
    return [seen[0] * cos - seen[1] * sin, seen[0] * sin + seen[1] * cos] as const;
  });
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  if (turn === 0) {
    const x = Math.max(0, Math.floor(left));
    const y = Math.max(0, Math.floor(top));
    const width = Math.min(view.width, Math.ceil(right)) - x;
    return { x, y, width, height: Math.min(view.height, Math.ceil(bottom)) - y };
  }
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const centre = { x: middle.x * cos + middle.y * sin, y: middle.y * cos - middle.x * sin };
  const width = Math.ceil(right - left);
  const height = Math.ceil(bottom - top);
  return { x: Math.round(centre.x - width / 2), y: Math.round(centre.y - height / 2), width, height };
}

/** Photographs an impression of a mark under the given conditions, in at most about so many bytes. */
export async function photograph(
  subject: Subject,
  conditions: Conditions,
  random: Random,
  bytes: number,
): Promise<Photograph> {
  const { view } = conditions;
  const density = view.scale * OVERSAMPLE;
  const box = seenBox(view);
  const margin = 3;
  const at: Placement = {
    width: Math.ceil((box.right - box.left) * density) + margin * 2,
    height: Math.ceil((box.bottom - box.top) * density) + margin * 2,
    x: -box.left * density + margin,
    y: -box.top * density + margin,
    pixelsPerMillimetre: density,
    turn: conditions.lean,
  };
  const room = furnishRoom(conditions.lighting, random);
  const surface = await setScene(subject, conditions, at, room, random);
  if (conditions.scaleStrip) {
    const { width: w, height: h } = subject.design;
    const length = Math.max(8, w * random.between(0.95, 1.3));
    const strip = await layScale(
      at.width,
      at.height,
      density,
      at.x + random.between(-0.06, 0.06) * w * density,
      at.y + (h / 2 + clearance(subject)) * density,
      random.normal() * 1.2,
      length,
      random,
    );
    layOver(surface, strip.surface, strip.cover, 1.6);
    for (let k = 0; k < strip.cover.data.length; k++)
      if ((strip.cover.data[k] ?? 0) > 0.9)
        surface.relief.data[k] = 1.6 + (surface.relief.data[k] ?? 0) * 0.05;
  }
  const roll = (view.roll * Math.PI) / 180;
  const eye = {
    x: -(view.tiltX * Math.cos(roll) + view.tiltY * Math.sin(roll)),
    y: -(-view.tiltX * Math.sin(roll) + view.tiltY * Math.cos(roll)),
    distance: 2.6 * Math.max(view.width, view.height) * OVERSAMPLE,
  };
  const light = shade(surface, room, eye);
  creep(light, surface, Math.max(1, density * 0.12));
  const rgb = expose(light, view, conditions.exposure, { x: at.x, y: at.y, density }, random);
  const webp = await squeeze(rgb, view.width, view.height, bytes);
  const turn = Math.round((((-(view.roll + conditions.lean) % 360) + 360) % 360) * 10) / 10;
  const upright = turn === 360 ? 0 : turn;
  return {
    webp,
    width: view.width,
    height: view.height,
    region: frameMark(subject, conditions, upright),
    turn: upright,
    pixelsPerMillimetre: Math.round(view.scale * 100) / 100,
  };
}
