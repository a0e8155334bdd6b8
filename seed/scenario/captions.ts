import type { Conditions } from "../render/conditions.ts";
import type { Random } from "../render/random.ts";
import type { Subject } from "../render/subject.ts";

const STRUCK = ["Clear impression", "Impression a little rubbed", "Worn impression", "Much worn impression"];
const PRINTED = ["Clean print", "Print a little rubbed", "Print worn and soiled", "Print much damaged"];
const SEWN = ["Fresh label", "Label a little soiled", "Label faded and soiled", "Label much worn"];

/** One short sentence on what a photograph shows. */
export function sayWhatIsShown(subject: Subject, conditions: Conditions, place: string): string {
  const words = ["woven", "embroidered", "cloth"].includes(subject.material)
    ? SEWN
    : ["paper", "tinplate", "enamel"].includes(subject.material)
      ? PRINTED
      : STRUCK;
  const decay = words === STRUCK ? conditions.wear : conditions.age * 0.8;
  const grade = words[decay < 0.2 ? 0 : decay < 0.4 ? 1 : decay < 0.58 ? 2 : 3] ?? "";
  const parts = [`${grade}${place ? `, ${place}` : ""}`];
  if (words === STRUCK && conditions.partial > 0.3) parts.push("one side struck weakly");
  if (words === STRUCK && conditions.doubled) parts.push("struck twice");
  if (conditions.lighting === "raking") parts.push("raking light");
  if (conditions.scaleStrip) parts.push("scale in millimetres");
  return `${parts.join("; ")}.`;
}

const CREDITS = [
  "Alma Redgate, Ennerwold Record Office",
  "Thrinemouth Maritime and Trades Archive",
  "Hallowdene Museum, T. Corrie",
  "Kessarwick Toy Collection",
  "Stavering Weavers' Library",
  "Jonah Petrie",
  "Winifred Amble",
  "Lodderham Local History Room",
  "Collection of the late B. Sorrel",
  "Carnhythe Guild Hall, photographic room",
  "Edda Thornquist",
  "R. and M. Calloway",
  "Piers Underhay",
  "Dunmarrow kiln finds, C. Loxton",
];

/** Who is said to have taken a photograph. */
export const creditFor = (random: Random): string => random.pick(CREDITS);
