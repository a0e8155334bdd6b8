import { type Backdrop, makeBackdrop } from "./backdrop.ts";
import { growPile } from "./cloth.ts";
import { emptyField, noise } from "./field.ts";
import type { Random } from "./random.ts";
import type { Subject } from "./subject.ts";
import { type Colour, colour, mix3, paintAll, type Surface } from "./surface.ts";

const BACKDROPS: Record<string, readonly Backdrop[]> = {
  metal: ["felt", "linen", "wood", "card", "slate", "card", "newsprint"],
  paper: ["wood", "wood", "slate", "felt", "card"],
};

/** The colour of the plush that a subject lies on, a little greyed as old mohair is. */
export function hairOf(subject: Subject): Colour {
  const named = /^plush:(#[0-9a-f]{6})/i.exec(subject.variety)?.[1] ?? "#9a6b3a";
  const fur = colour(named);
  const grey = 0.3 * fur[0] + 0.59 * fur[1] + 0.11 * fur[2];
  return mix3(fur, [grey, grey, grey], 0.3);
}

/** Covers a surface in the hair of plush. */
export function coverInPile(surface: Surface, fur: Colour, random: Random): void {
  const { width, height } = surface;
  paintAll(surface, [fur[0] * 0.22, fur[1] * 0.2, fur[2] * 0.2]);
  growPile(
    surface,
    {
      colour: fur,
      length: random.between(4, 8),
      dense: 0.9,
      hairs: [14, 34],
      settle: true,
      lie: random.between(0, 6.28),
      stray: random.between(0.25, 0.55),
    },
    emptyField(width, height, 1),
    random,
  );
}

/** What lies under and beside the object: plush, felt, a table, a card. */
export function layUnder(subject: Subject, surface: Surface, random: Random): Surface {
  const { width, height, density } = surface;
  const [, behind] = subject.variety.split(":");
  const plush = subject.stage === "button" || subject.variety.startsWith("plush");
  if (plush) {
    const under = makeBackdrop("felt", width, height, density, random);
    coverInPile(under, hairOf(subject), random);
    return under;
  }
  if (subject.variety.startsWith("felt") && behind) {
    const under = makeBackdrop("felt", width, height, density, random);
    const c = colour(behind);
    const fuzz = noise(width, height, Math.max(2, density * 0.4), 4, random);
    for (let k = 0; k < width * height; k++) {
      const v = 0.8 + (fuzz.data[k] ?? 0) * 0.2;
      under.red[k] = c[0] * v;
      under.green[k] = c[1] * v;
      under.blue[k] = c[2] * v;
    }
    return under;
  }
  const choices = BACKDROPS[
    ["paper", "woven", "cloth", "embroidered"].includes(subject.material) ? "paper" : "metal"
  ] ?? ["card"];
  const named =
    choices.find((kind) => kind === subject.variety) ?? (subject.variety === "linen" ? "linen" : undefined);
  return makeBackdrop(named ?? random.pick(choices), width, height, density, random);
}
