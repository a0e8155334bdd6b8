import type { Design } from "../designs/design.ts";

const MATERIALS = [
  "pewter",
  "plate",
  "brass",
  "steel",
  "nickel",
  "copper",
  "lead",
  "iron",
  "tin",
  "tinplate",
  "enamel",
  "stoneware",
  "paper",
  "woven",
  "embroidered",
  "cloth",
  "wood",
  "glass",
] as const;
type Material = (typeof MATERIALS)[number];

const STAGES = ["full", "bar", "disc", "sheet", "wall", "button"] as const;
type StageName = (typeof STAGES)[number];

/** What is photographed: a mark, the stuff that bears it and how it got there. */
export interface Subject {
  design: Design;
  material: Material;
  /** How the mark was made in it: relief, incuse, cast, etched, engraved, impressed, cobalt, painted, printed, burnt, stamped, inked, letterpress, litho, moulded. */
  how: string;
  stage: StageName;
  /** Kind of clay, glass or wood, or what lies behind a label. */
  variety: string;
  /** Ground first, then the inks in order. */
  inks: readonly string[];
  /** Colour of the thing round the mark. */
  around: string;
}

/** Reads `pewter relief disc`, `stoneware grey cobalt wall`, `woven plush sheet`: material, variety where one is needed, how, stage. */
export function readSubject(text: string, design: Design, inks: readonly string[], around: string): Subject {
  const parts = text.split(/\s+/);
  const material = MATERIALS.find((name) => name === parts[0]);
  const stage = STAGES.find((name) => name === parts.at(-1));
  if (!material)
    throw new Error(`render material: must be one of ${MATERIALS.join(", ")}. Received "${parts[0]}".`);
  if (!stage)
    throw new Error(`render stage: must be one of ${STAGES.join(", ")}. Received "${parts.at(-1)}".`);
  const middle = parts.slice(1, -1);
  const how = middle.at(-1) ?? "";
  return { design, material, how, stage, variety: middle.length > 1 ? (middle[0] ?? "") : how, inks, around };
}
