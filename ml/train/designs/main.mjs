/**
 * Draws designs: node designs/main.mjs SPLIT COUNT FILE.bin.gz [--seed N] [--twins SHARE] [--recuts SHARE] [--hands SHARE]
 *   [--processes N] [--svg FILE]
 *
 * FILE holds COUNT drawings of 2048 bytes each (128 x 128, one bit a pixel), gzipped. The shares say
 * how often a group is pairs of near twins (two marks that differ in one thing), pairs of recuts (one mark, cut twice),
 * fours of one hand-drawn sign, and single designs. FILE.json names each drawing's mark, and its twin's mark or -1.
 * The same split, count, share and seed give the same file.
 */
import { fork } from "node:child_process";
import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import { compose } from "./compose.mjs";
import { PACKED, rasterOf, svgOf } from "./draw.mjs";
import { emblemsOf } from "./emblems.mjs";
import { charactersOf, facesOf, sealFacesOf } from "./lettering.mjs";
import { randomFrom, seedOf } from "./random.mjs";
import { handOf, signOf } from "./hands.mjs";
import { recut, vary } from "./vary.mjs";

const LEAST_INK = 260;
const MOST_INK = 13000;
const LEAST_CHANGE = 60;
const splitSeeds = { train: 0, validation: 1_000_003, test: 2_000_003 };

function materialsOf(split) {
  const emblems = emblemsOf(split);
  const characters = new Map();
  return {
    emblems,
    emblemNames: [...emblems.keys()],
    faces: facesOf(split),
    sealFaces: sealFacesOf(split),
    // What is measured with stays as it was when the first edition was measured.
    ornaments: split === "train" ? 0.2 : 0,
    colours: split === "train",
    charactersOf: (face) => {
      if (!characters.has(face)) characters.set(face, charactersOf(face));
      return characters.get(face);
    },
  };
}

const differing = (a, b) => {
  let count = 0;
  for (let i = 0; i < a.length; i++) for (let x = a[i] ^ b[i]; x; x &= x - 1) count++;
  return count;
};

/** A design that draws, or the next one that does: fonts lack letters, some drawings come out empty. */
function drawOne(random, from) {
  for (let i = 0; i < 40; i++) {
    try {
      const design = compose(random, from);
      const svg = svgOf(design, from);
      const { bits, ink } = rasterOf(svg);
      if (ink >= LEAST_INK && ink <= MOST_INK) return { design, svg, bits };
    } catch (error) {
      if (!/draws nothing/.test(String(error))) throw error;
    }
  }
  throw new Error("40 designs in a row came out empty or full");
}

function drawTwin(random, first, from) {
  for (let i = 0; i < 12; i++) {
    try {
      const design = vary(random, first.design, from);
      if (!design) continue;
      const { bits, ink } = rasterOf(svgOf(design, from));
      if (ink >= LEAST_INK && ink <= MOST_INK && differing(bits, first.bits) >= LEAST_CHANGE) return bits;
    } catch (error) {
      if (!/draws nothing/.test(String(error))) throw error;
    }
  }
  return null;
}

/** An emblem that stands alone may do so once in a set that is searched: twice would be one mark. */
const loneEmblem = (design) => {
  const [punch] = design.punches;
  return design.punches.length === 1 && punch.parts.length === 1 && punch.parts[0].kind === "emblem" ? punch.parts[0].emblem : null;
};

const whole = (inside) => `<svg xmlns="http://www.w3.org/2000/svg" width="128" height="128" viewBox="-70 -70 140 140"><rect x="-70" y="-70" width="140" height="140" fill="#fff"/>${inside}</svg>`;

/** Four drawings of one sign by four hands. */
function drawHands(random) {
  const sign = signOf(random);
  return Array.from({ length: 4 }, () => rasterOf(whole(handOf(random, sign, random.between(0.5, 1.2)))));
}

const usable = ({ ink }) => ink >= LEAST_INK && ink <= MOST_INK;

/** What stands in a group: its drawings, which mark of the group each shows, and whether these are near twins. */
const groups = {
  single: (random, from) => ({ drawings: [drawOne(random, from).bits], marks: [0], twins: false }),
  twins: (random, from) => {
    const first = drawOne(random, from);
    return { drawings: [first.bits, drawTwin(random, first, from) ?? drawOne(random, from).bits], marks: [0, 1], twins: true };
  },
  recuts: (random, from) => {
    const first = drawOne(random, from);
    const again = rasterOf(svgOf(recut(random, first.design), from));
    return { drawings: [first.bits, usable(again) ? again.bits : first.bits], marks: [0, 0], twins: false };
  },
  hands: (random) => {
    for (let i = 0; i < 40; i++) {
      const drawn = drawHands(random);
      if (drawn.every(({ ink }) => ink >= 150 && ink <= MOST_INK)) return { drawings: drawn.map((d) => d.bits), marks: [0, 0, 0, 0], twins: false };
    }
    throw new Error("40 signs in a row came out empty or full");
  },
};

/** Designs for measuring: as `groups.single`, and no lone emblem twice. */
function drawUnique(random, from, lone) {
  let first = drawOne(random, from);
  while (lone.has(loneEmblem(first.design))) first = drawOne(random, from);
  if (loneEmblem(first.design)) lone.add(loneEmblem(first.design));
  return first;
}

function drawRange({ split, seed, start, end, shares, unique }) {
  const from = materialsOf(split);
  const out = Buffer.alloc((end - start) * PACKED);
  const [marks, twins] = [[], []];
  const lone = new Set();
  const svgs = [];
  for (let i = start; i < end; ) {
    const random = randomFrom(seedOf(seed + splitSeeds[split], i));
    let group;
    if (unique) {
      const first = drawUnique(random, from, lone);
      group = { drawings: [first.bits], marks: [0], twins: false };
      if (svgs.length < 120) svgs.push(first.svg);
      if (i < shares.twins * end) group = { drawings: [first.bits, drawTwin(random, first, from) ?? drawOne(random, from).bits], marks: [0, 1], twins: true };
    } else {
      const share = random.unit();
      const kind = share < shares.twins ? "twins" : share < shares.twins + shares.recuts ? "recuts" : share < shares.twins + shares.recuts + shares.hands ? "hands" : "single";
      group = groups[kind](random, from);
    }
    for (const [k, bits] of group.drawings.entries()) {
      if (i >= end) break;
      bits.copy(out, (i - start) * PACKED);
      marks.push(i - k + group.marks[k]);
      twins.push(group.twins ? i - k + (1 - group.marks[k]) : -1);
      i++;
    }
    if (i % 5000 < 2 && process.send) process.send({ at: i - start });
  }
  if (twins.at(-1) >= end) twins[twins.length - 1] = -1;
  return { bits: out, svgs, marks, twins };
}

async function main() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { seed: { type: "string", default: "1" }, twins: { type: "string", default: "0" }, recuts: { type: "string", default: "0" }, hands: { type: "string", default: "0" }, processes: { type: "string", default: "2" }, svg: { type: "string" } },
  });
  const [split, countText, file] = positionals;
  const count = Number(countText);
  if (!(split in splitSeeds) || !Number.isInteger(count) || count < 1 || !file)
    throw new Error(`Give a split (train, validation, test), a count and a file. Received ${positionals.join(" ")}`);
  const shares = { twins: Number(values.twins), recuts: Number(values.recuts), hands: Number(values.hands) };
  const unique = split !== "train";
  const processes = unique ? 1 : Number(values.processes);
  const share = Math.ceil(count / processes / 2) * 2;
  const ranges = Array.from({ length: processes }, (_, k) => ({ split, seed: Number(values.seed), start: k * share, end: Math.min(count, (k + 1) * share), shares, unique }));
  const drawn = processes === 1 ? ranges.map(drawRange) : await Promise.all(ranges.map((range) => new Promise((resolve, reject) => {
    const child = fork(new URL(import.meta.url), ["--range"], { serialization: "advanced" });
    child.on("message", (message) => {
      if (message.at) console.error(`${message.at} of ${range.end - range.start} from ${range.start}`);
      else resolve({ ...message, bits: Buffer.from(message.bits) });
    });
    child.on("error", reject);
    child.on("exit", (code) => code && reject(new Error(`a drawing process ended with ${code}`)));
    child.send(range);
  })));
  const all = Buffer.concat(drawn.map((d) => d.bits));
  writeFileSync(file, gzipSync(all, { level: 6 }));
  if (values.svg) writeFileSync(values.svg, JSON.stringify(drawn[0].svgs));
  writeFileSync(`${file}.json`, JSON.stringify({ marks: drawn.flatMap((d) => d.marks), twins: drawn.flatMap((d) => d.twins) }));
  console.log(JSON.stringify({ split, count, ...shares, seed: Number(values.seed), sha256: createHash("sha256").update(all).digest("hex") }));
}

if (process.argv[2] === "--range")
  process.once("message", (range) => {
    process.send(drawRange(range), () => process.exit(0));
  });
else await main();
