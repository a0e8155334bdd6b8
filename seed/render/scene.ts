import type { Placement } from "../designs/raster.ts";
import type { Conditions } from "./conditions.ts";
import type { Room } from "./environment.ts";
import type { Field } from "./field.ts";
import type { Random } from "./random.ts";
import type { Staged } from "./stage.ts";
import type { Subject } from "./subject.ts";
import { type Colour, colour, type Surface } from "./surface.ts";

/** What a material needs to know to clothe the object that bears a mark. */
export interface Scene {
  subject: Subject;
  conditions: Conditions;
  surface: Surface;
  staged: Staged;
  at: Placement;
  room: Room;
  random: Random;
  /** The ground of the mark, 0 to 1. */
  field: Field;
}

/** The colours of a subject: the ground of the mark, its inks, and what is round it. */
export function inksOf(subject: Subject): { ground: Colour; inks: Colour[]; around: Colour } {
  const [ground = "#e8e0cc", ...inks] = subject.inks;
  return {
    ground: colour(ground),
    inks: inks.length > 0 ? inks.map(colour) : [colour("#1a1a1a")],
    around: colour(subject.around || ground),
  };
}
