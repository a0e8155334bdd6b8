import { fieldMask, type Placement } from "../designs/raster.ts";
import { fray, growPile } from "./cloth.ts";
import { clothe } from "./clothe.ts";
import type { Conditions } from "./conditions.ts";
import type { Room } from "./environment.ts";
import { emptyField, smoothstep } from "./field.ts";
import { hairOf, layUnder } from "./lie-under.ts";
import type { Random } from "./random.ts";
import { layStage } from "./stage.ts";
import { stageFor } from "./stage-for.ts";
import type { Subject } from "./subject.ts";
import { colour, layOver, makeSurface, type Surface } from "./surface.ts";

/** Builds everything that lies before the camera on one surface. */
export async function setScene(
  subject: Subject,
  conditions: Conditions,
  at: Placement,
  room: Room,
  random: Random,
): Promise<Surface> {
  const { width, height, pixelsPerMillimetre: density } = at;
  const staged = layStage(stageFor(subject, conditions, random), width, height, density, at.x, at.y, random);
  const thing = makeSurface(width, height, density);
  const field = { width, height, data: await fieldMask(subject.design, at) };
  await clothe({ subject, conditions, surface: thing, staged, at, room, random, field });
  if (subject.stage === "full" || subject.stage === "wall") return thing;
  const under = layUnder(subject, thing, random);
  const thin = subject.stage === "sheet";
  layOver(
    under,
    thing,
    staged.cover,
    thin ? Math.max(1.2, density * 0.22) : Math.max(2, density * (subject.stage === "button" ? 0.9 : 1.4)),
  );
  if (subject.stage === "button" || subject.variety.startsWith("plush")) {
    const rim = emptyField(width, height);
    for (let k = 0; k < rim.data.length; k++) {
      const d = staged.inside.data[k] ?? 0;
      rim.data[k] = d < 0 ? 0.3 * smoothstep(-density * 4.5, -density, d) : 0;
    }
    growPile(
      under,
      {
        colour: hairOf(subject),
        length: random.between(2.5, 4.5),
        dense: 0.6,
        hairs: [4, 14],
        settle: false,
        lie: random.between(0, 6.28),
        stray: 1.1,
      },
      rim,
      random,
    );
  } else if (subject.material === "woven" || subject.material === "cloth")
    fray(under, staged.inside, colour(subject.around || "#d8d0c0"), 0.5 + conditions.age * 0.6, random);
  return under;
}
