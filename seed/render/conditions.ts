import type { Exposure, View } from "./camera.ts";
import type { Lighting } from "./environment.ts";
import type { Random } from "./random.ts";
import type { Subject } from "./subject.ts";

/** Everything that differs from one photograph of a mark to the next. */
export interface Conditions {
  view: View;
  exposure: Exposure;
  lighting: Lighting;
  /** 0 fresh to 1 nearly gone; the age of the thing; unevenness of the strike. */
  wear: number;
  age: number;
  partial: number;
  doubled: boolean;
  scaleStrip: boolean;
  /** How the mark sits on its object, degrees. */
  lean: number;
}

type Shape = readonly [number, number];

/** Pixels of a picture; the longer side is always 480. */
const TALL: readonly Shape[] = [
  [360, 480],
  [384, 480],
  [384, 480],
];
const BROAD: readonly Shape[] = [
  [480, 360],
  [480, 320],
  [480, 320],
];
const EVEN: readonly Shape[] = [
  [480, 360],
  [480, 384],
  [480, 480],
  [480, 400],
];

/** The upright box round a mark that is turned, in millimetres. */
function turnedBox(subject: Subject, roll: number): { width: number; height: number } {
  const c = Math.abs(Math.cos((roll * Math.PI) / 180));
  const s = Math.abs(Math.sin((roll * Math.PI) / 180));
  const { width, height } = subject.design;
  return { width: width * c + height * s, height: width * s + height * c };
}

/** A picture's shape that suits the mark's, mostly. */
function shapeFor(subject: Subject, roll: number, random: Random): Shape {
  const box = turnedBox(subject, roll);
  if (random.chance(0.08)) return random.pick(EVEN);
  if (box.height > box.width * 1.15) return random.pick(TALL);
  return random.pick(box.width > box.height * 1.5 ? BROAD : EVEN);
}

/** A collection's photograph: careful, the mark a third to three quarters of the frame. */
export function careful(subject: Subject, index: number, random: Random): Conditions {
  const roll = random.chance(0.66)
    ? random.normal() * 4
    : random.chance(0.7)
      ? random.between(-38, 38)
      : random.pick([90, -90, 180]) + random.normal() * 6;
  const [width, height] = shapeFor(subject, roll, random);
  const share = random.between(0.52, 0.8);
  const scaleStrip = random.chance(0.3) && Math.abs(roll) < 60;
  return finish(subject, {
    width,
    height,
    roll,
    share: scaleStrip ? share * 0.9 : share,
    scaleStrip,
    hard: index === 0 ? 0.15 : random.between(0.1, 0.62),
    random,
  });
}

/** As people photograph: near, askew, in whatever light there is. */
export function hasty(subject: Subject, random: Random): Conditions {
  const roll = random.chance(0.5) ? random.normal() * 9 : random.between(-180, 180);
  const [width, height] = shapeFor(subject, roll, random);
  return finish(subject, {
    width,
    height,
    roll,
    share: random.between(0.66, 0.88),
    scaleStrip: false,
    hard: random.between(0.4, 0.78),
    random,
  });
}

interface Wish {
  width: number;
  height: number;
  roll: number;
  share: number;
  scaleStrip: boolean;
  hard: number;
  random: Random;
}

function finish(
  subject: Subject,
  { width, height, roll, share, scaleStrip, hard, random }: Wish,
): Conditions {
  const { width: boxWidth, height: boxHeight } = turnedBox(subject, roll);
  const scale = Math.min((width * share) / boxWidth, (height * Math.min(0.86, share * 1.12)) / boxHeight);
  const roomX = (width - boxWidth * scale) / 2;
  const roomY = (height - boxHeight * scale) / 2;
  const lowered = scaleStrip ? -0.45 : 0;
  const shiny = ["pewter", "plate", "brass", "nickel", "steel"].includes(subject.material);
  const lighting = random.pick<Lighting>(
    shiny
      ? ["softbox", "softbox", "window", "overcast", "overcast", "lamp", "raking", "dim"]
      : ["window", "window", "softbox", "overcast", "overcast", "lamp", "raking", "raking", "flash", "dim"],
  );
  const warm = {
    window: -0.02,
    softbox: 0,
    lamp: 0.06,
    overcast: -0.035,
    flash: 0.01,
    raking: 0.03,
    dim: 0.08,
  }[lighting];
  return {
    view: {
      width,
      height,
      scale,
      roll,
      tiltX: random.normal() * 0.1 * (0.6 + hard),
      tiltY: random.normal() * 0.1 * (0.6 + hard),
      x: width / 2 + roomX * random.between(-0.42, 0.42),
      y: height / 2 + roomY * (lowered + random.between(-0.35, 0.35)),
    },
    exposure: {
      stops: random.normal() * 0.22 - (lighting === "dim" ? 0.35 : 0),
      warmth: warm + random.normal() * 0.025,
      vignette: random.between(0.05, 0.4),
      noise: random.between(0.006, 0.014) + (lighting === "dim" ? 0.012 : 0),
      softness: random.between(0.2, 0.5) + (random.chance(hard * 0.3) ? random.between(0.4, 0.9) : 0),
      shallow: random.between(0.05, 0.65),
      contrast: random.between(1, 1.2),
      saturation: random.between(0.78, 1),
    },
    lighting,
    wear: Math.min(0.75, hard * random.between(0.35, 1.05)),
    age: Math.min(1, 0.25 + hard * random.between(0.4, 1.3)),
    partial: random.chance(0.35) ? hard * random.between(0.3, 0.95) : hard * 0.15,
    doubled: random.chance(0.08),
    scaleStrip,
    lean: random.normal() * 2,
  };
}
