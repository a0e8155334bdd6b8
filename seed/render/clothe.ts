import { deviceMask, inkMasks } from "../designs/raster.ts";
import { weavePlain } from "./backdrop.ts";
import { growPile, makeEmbroidered, makeWoven } from "./cloth.ts";
import { blur, emptyField, noise } from "./field.ts";
import { makeGlass } from "./glass.ts";
import { coverInPile, hairOf } from "./lie-under.ts";
import { type Metal, makeMetal } from "./metal.ts";
import { makePaper } from "./paper.ts";
import { print } from "./print.ts";
import { inksOf, type Scene } from "./scene.ts";
import { type Body, makeStoneware } from "./stoneware.ts";
import { noStrike, strikeFor } from "./strike-for.ts";
import { makeTinplate } from "./tinplate.ts";
import { makeWood } from "./wood.ts";

async function clotheInTinplate(scene: Scene): Promise<void> {
  const { subject, conditions, surface, staged, at, random, field } = scene;
  const { width, height, density } = surface;
  const { ground, inks, around } = inksOf(subject);
  const masks = await inkMasks(subject.design, at);
  const pressed =
    subject.how === "pressed"
      ? blur({ width, height, data: await deviceMask(subject.design, at) }, density * 0.25)
      : emptyField(width, height);
  for (let k = 0; k < pressed.data.length; k++) pressed.data[k] = (pressed.data[k] ?? 0) * (density * 0.5);
  const enamel = subject.material === "enamel";
  const { age } = conditions;
  makeTinplate(
    surface,
    { around, ground, field: field.data, masks, inks, shape: staged.relief, age, enamel, pressed },
    random,
  );
}

async function clotheInStoneware(scene: Scene): Promise<void> {
  const { subject, conditions, surface, staged, at, random } = scene;
  const { how } = subject;
  const painted = how === "painted" || how === "printed";
  const masks = painted ? await inkMasks(subject.design, at) : [];
  const struck = painted ? noStrike(surface.width, surface.height) : await strikeFor(scene);
  const { inks } = inksOf(subject);
  makeStoneware(
    surface,
    {
      body: subject.variety as Body,
      strike: struck,
      shape: staged.relief,
      ...(painted ? { paint: { masks, inks, brushed: how === "painted" } } : {}),
      cobalt: how === "cobalt" ? random.between(0.7, 1) : 0,
      age: conditions.age,
      throwing: subject.stage === "wall" ? random.between(0.1, 0.8) : 0.1,
    },
    random,
  );
}

async function clotheInPaper(scene: Scene): Promise<void> {
  const { subject, conditions, surface, staged, at, random, field } = scene;
  const { ground, inks, around } = inksOf(subject);
  const { how } = subject;
  makePaper(
    surface,
    {
      stock: around,
      ground,
      field: field.data,
      masks: await inkMasks(subject.design, at),
      inks,
      inside: staged.inside,
      shape: staged.relief,
      age: conditions.age,
      process: how === "litho" ? "litho" : how === "inked" ? "stamp" : "letterpress",
      gloss: how === "litho" ? 0.35 : 0.05,
    },
    random,
  );
}

async function clotheInRibbon(scene: Scene): Promise<void> {
  const { subject, conditions, surface, staged, at, random, field } = scene;
  const { ground, inks, around } = inksOf(subject);
  makeWoven(
    surface,
    {
      field: field.data,
      masks: await inkMasks(subject.design, at),
      inks,
      cloth: around,
      ground,
      x: at.x,
      y: at.y,
      turn: at.turn,
      shape: staged.relief,
      inside: staged.inside,
      age: conditions.age,
    },
    random,
  );
}

/** Stitches worked straight into plush, with some hair over them. */
async function stitchIntoPlush(scene: Scene): Promise<void> {
  const { subject, surface, at, random } = scene;
  const fur = hairOf(subject);
  coverInPile(surface, fur, random);
  makeEmbroidered(surface, await inkMasks(subject.design, at), inksOf(subject).inks, at.turn, random);
  growPile(
    surface,
    { colour: fur, length: 3, dense: 0.5, hairs: [1, 4], settle: false, lie: 1, stray: 0.9 },
    emptyField(surface.width, surface.height, 0.22),
    random,
  );
}

async function clotheInLinen(scene: Scene): Promise<void> {
  const { subject, conditions, surface, staged, at, random } = scene;
  const { width, height, density, relief } = surface;
  const embroidered = subject.material === "embroidered";
  if (embroidered && subject.stage === "full") return stitchIntoPlush(scene);
  const { inks, around } = inksOf(subject);
  weavePlain(surface, around, random.between(0.28, 0.5), 0.25, random);
  const drape = noise(width, height, density * 12, 3, random);
  for (let k = 0; k < drape.data.length; k++)
    relief.data[k] =
      (relief.data[k] ?? 0) + ((staged.relief.data[k] ?? 0) + (drape.data[k] ?? 0) * density * 0.3);
  const masks = await inkMasks(subject.design, at);
  if (embroidered) return makeEmbroidered(surface, masks, inks, at.turn, random);
  const uneven = subject.how === "inked" ? 0.75 : 0.3;
  const lost = 0.1 + conditions.age * 0.22;
  print(surface, { masks, inks, register: 0.06, uneven, lost, bleed: 0.14 }, random);
}

async function clotheInWood(scene: Scene): Promise<void> {
  const { subject, conditions, surface, staged, at, random } = scene;
  const { inks, around } = inksOf(subject);
  const { age } = conditions;
  if (subject.how !== "inked") {
    const how = subject.how === "burnt" ? "burnt" : "stamped";
    makeWood(surface, around, await strikeFor(scene), staged.relief, how, age, random);
    return;
  }
  const masks = await inkMasks(subject.design, at);
  const flat = noStrike(surface.width, surface.height);
  makeWood(surface, around, flat, staged.relief, "stamped", age, random);
  const lost = 0.12 + age * 0.22;
  print(surface, { masks, inks, register: 0.05, uneven: 0.7, lost, bleed: 0.12 }, random);
}

async function clotheInGlass(scene: Scene): Promise<void> {
  const { subject, surface, staged, room, random } = scene;
  const how = subject.how === "etched" ? "etched" : "moulded";
  const struck = await strikeFor(scene);
  makeGlass(surface, inksOf(subject).around, struck, staged.relief, how, room, random);
}

async function clotheInMetal(scene: Scene, metal: Metal): Promise<void> {
  const { subject, conditions, surface, staged, random } = scene;
  const struck = await strikeFor(scene);
  const brushed = random.chance(metal === "steel" ? 0.9 : metal === "brass" ? 0.55 : 0.2);
  const blacken = subject.how === "etched" ? 0.85 : subject.how === "engraved" ? random.between(0.4, 0.9) : 0;
  makeMetal(
    surface,
    {
      metal,
      age: conditions.age,
      strike: struck,
      shape: staged.relief,
      inside: staged.inside,
      ...(brushed ? { brushed: 0 } : {}),
      blacken,
    },
    random,
  );
}

/** Gives the object of a scene its material, with the mark in it or on it. */
export function clothe(scene: Scene): Promise<void> {
  const { material } = scene.subject;
  switch (material) {
    case "tinplate":
    case "enamel":
      return clotheInTinplate(scene);
    case "stoneware":
      return clotheInStoneware(scene);
    case "paper":
      return clotheInPaper(scene);
    case "woven":
      return clotheInRibbon(scene);
    case "embroidered":
    case "cloth":
      return clotheInLinen(scene);
    case "wood":
      return clotheInWood(scene);
    case "glass":
      return clotheInGlass(scene);
    default:
      return clotheInMetal(scene, material);
  }
}
