import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { drawBoat } from "./objects/draw-boat.ts";
import { drawAlbumPage, drawLetter, drawReceipt } from "./objects/draw-papers.ts";
import { careful } from "./render/conditions.ts";
import { photograph } from "./render/photograph.ts";
import { randomFrom } from "./render/random.ts";
import { buildScenario } from "./scenario/build.ts";

/**
 * Writes the pictures of the demo's object file into demo/objects: the boat from both sides, its marks and its papers.
 * `npx tsx seed/generate-objects.ts`; the same program gives the same pictures.
 */
const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, "demo", "objects");
const BYTES = 40_000;

/** Marks of the boat, the entries they show, and which draw of the renderer is taken. */
const MARKS = [
  ["deck", "brandreth-sons-schooner", 2],
  ["hull", "brandreth-sons-schooner", 5],
  ["stern", "petherick-round-label", 1],
] as const;

mkdirSync(out, { recursive: true });
const write = (name: string, picture: Buffer) => writeFileSync(join(out, `${name}.webp`), picture);
write("port-side", await drawBoat("port"));
write("starboard-side", await drawBoat("starboard"));
write("receipt", await drawReceipt());
write("album-page", await drawAlbumPage());
const letter = readFileSync(join(out, "letter.txt"), "utf8").trim().split("\n");
write("letter", await drawLetter(letter));
const { subjects } = buildScenario(join(here, "scenario"));
for (const [name, key, draw] of MARKS) {
  const subject = subjects.get(key);
  if (!subject) throw new Error(`mark: must be of an entry of the scenario. Received "${key}".`);
  const random = randomFrom(`ennerwold/object/${name}/${draw}`);
  write(name, (await photograph(subject, careful(subject, draw, random), random, BYTES)).webp);
}
