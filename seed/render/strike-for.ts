import { deviceMask } from "../designs/raster.ts";
import { emptyField } from "./field.ts";
import type { Scene } from "./scene.ts";
import { type Strike, type StrikeWish, strike } from "./strike.ts";

const STRIKES: Record<string, Omit<StrikeWish, "wear" | "partial" | "doubled">> = {
  relief: { style: "relief", depth: 0.34, edge: 0.085, lip: 0.5 },
  incuse: { style: "incuse", depth: 0.28, edge: 0.075, lip: 0.45 },
  cast: { style: "cast", depth: 0.42, edge: 0.16, lip: 0 },
  engraved: { style: "incuse", depth: 0.16, edge: 0.05, lip: 0.15 },
  etched: { style: "incuse", depth: 0.05, edge: 0.04, lip: 0 },
  impressed: { style: "incuse", depth: 1.4, edge: 0.17, lip: 0.35 },
  cobalt: { style: "incuse", depth: 1.4, edge: 0.17, lip: 0.35 },
  sunk: { style: "relief", depth: 1.7, edge: 0.17, lip: 0.3 },
  burnt: { style: "incuse", depth: 0.7, edge: 0.13, lip: 0.1 },
  stamped: { style: "incuse", depth: 0.6, edge: 0.15, lip: 0.2 },
  moulded: { style: "cast", depth: 0.85, edge: 0.2, lip: 0 },
};

/** Depth follows the size of the mark: a punch of 3 mm is shallower than a brick stamp. */
/** How the mark of a scene bit into its material. */
export async function strikeFor(scene: Scene): Promise<Strike> {
  const { subject, conditions, at, random, field } = scene;
  const { width, height } = field;
  const device = { width, height, data: await deviceMask(subject.design, at) };
  const found = STRIKES[subject.how];
  if (!found)
    throw new Error(
      `render how: must be one of ${Object.keys(STRIKES).join(", ")} for ${subject.material}. Received "${subject.how}".`,
    );
  const size = Math.min(subject.design.width, subject.design.height * 2.2);
  const usual =
    subject.material === "stoneware" || subject.material === "wood" || subject.material === "glass" ? 26 : 13;
  const share = Math.max(0.35, Math.min(1.9, size / usual));
  const style = found.style === "relief" && !subject.design.field ? "incuse" : found.style;
  const wish: StrikeWish = {
    ...found,
    style,
    depth: found.depth * share * (subject.material === "iron" ? 2 : 1),
    edge: found.edge * share,
    wear:
      conditions.wear *
      (subject.material === "stoneware" || subject.material === "glass"
        ? 0.55
        : subject.material === "lead" || subject.material === "iron"
          ? 0.6
          : 1),
    partial: conditions.partial,
    doubled: conditions.doubled && subject.material !== "glass",
  };
  const radius = (Math.hypot(subject.design.width, subject.design.height) / 2) * at.pixelsPerMillimetre;
  return strike(field, device, wish, at.pixelsPerMillimetre, at.x, at.y, radius, random);
}

/** No impression at all, for marks that lie on the surface. */
export function noStrike(width: number, height: number): Strike {
  return {
    relief: emptyField(width, height),
    sunk: emptyField(width, height),
    strength: emptyField(width, height),
  };
}
