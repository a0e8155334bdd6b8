import { deviceMask, fieldMask, inkMasks, type Placement } from "../designs/raster.ts";
import { type Backdrop, makeBackdrop, weavePlain } from "./backdrop.ts";
import { fray, growPile, makeEmbroidered, makeWoven } from "./cloth.ts";
import type { Conditions } from "./conditions.ts";
import type { Room } from "./environment.ts";
import { blur, emptyField, type Field, noise, smoothstep } from "./field.ts";
import { makeGlass } from "./glass.ts";
import { type Metal, makeMetal } from "./metal.ts";
import { makePaper } from "./paper.ts";
import { print } from "./print.ts";
import type { Random } from "./random.ts";
import { layStage, type Stage, type Staged } from "./stage.ts";
import { type Body, makeStoneware } from "./stoneware.ts";
import { type Strike, type StrikeWish, strike } from "./strike.ts";
import type { Subject } from "./subject.ts";
import { type Colour, colour, layOver, makeSurface, mix3, paintAll, type Surface } from "./surface.ts";
import { makeTinplate } from "./tinplate.ts";
import { makeWood } from "./wood.ts";

function stageFor(subject: Subject, conditions: Conditions, random: Random): Stage {
  const { width: w, height: h } = subject.design;
  const reach = Math.hypot(w, h) / 2;
  switch (subject.stage) {
    case "full":
      return { kind: "full", bulge: random.between(-0.05, 0.08) };
    case "wall":
      return { kind: "wall", radius: Math.max(w * 1.25, random.between(45, 80)) };
    case "bar":
      return {
        kind: "bar",
        half: h * random.between(0.72, 1.05) + 0.8,
        flare: random.between(-0.4, 0.9),
        round: Math.min(2.2, h * 0.35),
        bulge: random.between(0.2, 0.7),
      };
    case "disc": {
      const radius = reach * random.between(1.7, 3.2) + 8;
      const angle = random.between(0, Math.PI * 2);
      const away = random.between(0, Math.max(0, radius - reach * 1.25));
      return {
        kind: "disc",
        x: Math.cos(angle) * away,
        y: Math.sin(angle) * away,
        radius,
        round: random.between(1, 2.4),
        rings:
          subject.material !== "glass" && subject.material !== "stoneware" && random.chance(0.7)
            ? random.between(0.4, 1.4)
            : 0,
        bulge: random.between(-0.5, 0.8),
      };
    }
    case "button":
      return {
        kind: "disc",
        x: 0,
        y: 0,
        radius: Math.max(w, h) / 2 + Math.max(w, h) * 0.07,
        round: Math.max(w, h) * 0.09,
        rings: 0,
        bulge: Math.max(w, h) * 0.07,
      };
    case "sheet": {
      const paper = subject.material === "paper";
      const margin = Math.max(1.2, Math.min(w, h) * random.between(0.07, 0.2));
      return {
        kind: "sheet",
        halfWidth: w / 2 + margin * (subject.material === "woven" ? 1.6 : 1),
        halfHeight: h / 2 + margin,
        corner:
          subject.design.frame.endsWith("circle") && random.chance(0.75)
            ? h / 2 + margin
            : random.chance(0.3)
              ? margin * 0.5
              : 0.3,
        round: paper ? 0 : 0.35,
        ragged: paper ? random.between(0.03, 0.2) + conditions.age * random.between(0, 0.5) : 0.06,
        bulge: random.between(-0.6, 0.9),
      };
    }
  }
}

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
function strikeFor(
  subject: Subject,
  conditions: Conditions,
  masks: { field: Field; device: Field },
  at: Placement,
  random: Random,
): Strike {
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
    depth: found.depth * share,
    edge: found.edge * share,
    wear:
      conditions.wear *
      (subject.material === "stoneware" || subject.material === "glass"
        ? 0.55
        : subject.material === "lead"
          ? 0.75
          : 1),
    partial: conditions.partial,
    doubled: conditions.doubled && subject.material !== "glass",
  };
  const radius = (Math.hypot(subject.design.width, subject.design.height) / 2) * at.pixelsPerMillimetre;
  return strike(masks.field, masks.device, wish, at.pixelsPerMillimetre, at.x, at.y, radius, random);
}

function inksOf(subject: Subject): { ground: Colour; inks: Colour[]; around: Colour } {
  const [ground = "#e8e0cc", ...inks] = subject.inks;
  return {
    ground: colour(ground),
    inks: inks.length > 0 ? inks.map(colour) : [colour("#1a1a1a")],
    around: colour(subject.around || ground),
  };
}

const BACKDROPS: Record<string, readonly Backdrop[]> = {
  metal: ["felt", "linen", "wood", "card", "slate", "card", "newsprint"],
  paper: ["wood", "wood", "slate", "felt", "card"],
};

async function clothe(
  subject: Subject,
  conditions: Conditions,
  surface: Surface,
  staged: Staged,
  at: Placement,
  room: Room,
  random: Random,
): Promise<void> {
  const { width, height, density } = surface;
  const field: Field = { width, height, data: await fieldMask(subject.design, at) };
  const shape = staged.relief;
  const { material, how } = subject;
  const { ground, inks, around } = inksOf(subject);
  const device = async (): Promise<Field> => ({ width, height, data: await deviceMask(subject.design, at) });
  switch (material) {
    case "tinplate":
    case "enamel": {
      const masks = await inkMasks(subject.design, at);
      const pressed = how === "pressed" ? blur(await device(), density * 0.25) : emptyField(width, height);
      for (let k = 0; k < pressed.data.length; k++)
        pressed.data[k] = (pressed.data[k] ?? 0) * (density * 0.5);
      makeTinplate(
        surface,
        {
          around,
          ground,
          field: field.data,
          masks,
          inks,
          shape,
          age: conditions.age,
          enamel: material === "enamel",
          pressed,
        },
        random,
      );
      return;
    }
    case "stoneware": {
      const painted = how === "painted" || how === "printed";
      const masks = painted ? await inkMasks(subject.design, at) : [];
      const flat = {
        relief: emptyField(width, height),
        sunk: emptyField(width, height),
        strength: emptyField(width, height),
      };
      const struck = painted
        ? flat
        : strikeFor(subject, conditions, { field, device: await device() }, at, random);
      makeStoneware(
        surface,
        {
          body: subject.variety as Body,
          strike: struck,
          shape,
          ...(painted ? { paint: { masks, inks, brushed: how === "painted" } } : {}),
          cobalt: how === "cobalt" ? random.between(0.7, 1) : 0,
          age: conditions.age,
          throwing: subject.stage === "wall" ? random.between(0.1, 0.8) : 0.1,
        },
        random,
      );
      return;
    }
    case "paper": {
      const masks = await inkMasks(subject.design, at);
      const process = how === "litho" ? "litho" : how === "inked" ? "stamp" : "letterpress";
      makePaper(
        surface,
        {
          stock: around,
          ground,
          field: field.data,
          masks,
          inks,
          inside: staged.inside,
          shape,
          age: conditions.age,
          process,
          gloss: how === "litho" ? 0.35 : 0.05,
        },
        random,
      );
      return;
    }
    case "woven": {
      const masks = await inkMasks(subject.design, at);
      makeWoven(
        surface,
        {
          field: field.data,
          masks,
          inks,
          cloth: around,
          ground,
          x: at.x,
          y: at.y,
          turn: at.turn,
          shape,
          inside: staged.inside,
          age: conditions.age,
        },
        random,
      );
      return;
    }
    case "embroidered":
    case "cloth": {
      if (material === "embroidered" && subject.stage === "full") {
        const fur = hairOf(subject);
        coverInPile(surface, fur, random);
        makeEmbroidered(surface, await inkMasks(subject.design, at), inks, at.turn, random);
        const everywhere = emptyField(width, height, 0.22);
        growPile(
          surface,
          { colour: fur, length: 3, dense: 0.5, hairs: [1, 4], settle: false, lie: 1, stray: 0.9 },
          everywhere,
          random,
        );
        return;
      }
      weavePlain(surface, around, random.between(0.28, 0.5), 0.25, random);
      const drape = noise(width, height, density * 12, 3, random);
      for (let k = 0; k < drape.data.length; k++)
        surface.relief.data[k] =
          (surface.relief.data[k] ?? 0) + ((shape.data[k] ?? 0) + (drape.data[k] ?? 0) * density * 0.3);
      const masks = await inkMasks(subject.design, at);
      if (material === "embroidered") makeEmbroidered(surface, masks, inks, at.turn, random);
      else
        print(
          surface,
          {
            masks,
            inks,
            register: 0.06,
            uneven: how === "inked" ? 0.75 : 0.3,
            lost: 0.1 + conditions.age * 0.22,
            bleed: 0.14,
          },
          random,
        );
      return;
    }
    case "wood": {
      if (how === "inked") {
        const masks = await inkMasks(subject.design, at);
        const flat: Strike = {
          relief: emptyField(width, height),
          sunk: emptyField(width, height),
          strength: emptyField(width, height),
        };
        makeWood(surface, around, flat, shape, "stamped", conditions.age, random);
        print(
          surface,
          { masks, inks, register: 0.05, uneven: 0.7, lost: 0.12 + conditions.age * 0.22, bleed: 0.12 },
          random,
        );
        return;
      }
      makeWood(
        surface,
        around,
        strikeFor(subject, conditions, { field, device: await device() }, at, random),
        shape,
        how === "burnt" ? "burnt" : "stamped",
        conditions.age,
        random,
      );
      return;
    }
    case "glass":
      makeGlass(
        surface,
        around,
        strikeFor(subject, conditions, { field, device: await device() }, at, random),
        shape,
        how === "etched" ? "etched" : "moulded",
        room,
        random,
      );
      return;
    default: {
      const metal: Metal = material;
      makeMetal(
        surface,
        {
          metal,
          age: conditions.age,
          strike: strikeFor(subject, conditions, { field, device: await device() }, at, random),
          shape,
          inside: staged.inside,
          ...(random.chance(metal === "steel" ? 0.9 : metal === "brass" ? 0.55 : 0.2) ? { brushed: 0 } : {}),
          ...(how === "etched"
            ? { blacken: 0.85 }
            : how === "engraved"
              ? { blacken: random.between(0.4, 0.9) }
              : {}),
        },
        random,
      );
    }
  }
}

/** The colour of the plush that a subject lies on, a little greyed as old mohair is. */
function hairOf(subject: Subject): Colour {
  const named = /^plush:(#[0-9a-f]{6})/i.exec(subject.variety)?.[1] ?? "#9a6b3a";
  const fur = colour(named);
  const grey = 0.3 * fur[0] + 0.59 * fur[1] + 0.11 * fur[2];
  return mix3(fur, [grey, grey, grey], 0.3);
}

function coverInPile(surface: Surface, fur: Colour, random: Random): void {
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

async function beneath(subject: Subject, surface: Surface, random: Random): Promise<Surface> {
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
  await clothe(subject, conditions, thing, staged, at, room, random);
  if (subject.stage === "full" || subject.stage === "wall") return thing;
  const under = await beneath(subject, thing, random);
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
