/**
 * Draws designs: node designs/main.mjs SPLIT COUNT FILE.bin.gz [--seed N] [--twins SHARE] [--processes N] [--svg FILE]
 *
 * FILE holds COUNT designs of 2048 bytes each (128 x 128, one bit a pixel), gzipped. The first
 * round(COUNT x SHARE / 2) x 2 designs are near twins in pairs: 2k and 2k + 1 differ in one thing.
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
import { vary } from "./vary.mjs";

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

function drawRange({ split, seed, start, end, twins, unique }) {
  const from = materialsOf(split);
  const out = Buffer.alloc((end - start) * PACKED);
  const svgs = [];
  const lone = new Set();
  for (let i = start; i < end; ) {
    const random = randomFrom(seedOf(seed + splitSeeds[split], i));
    let first = drawOne(random, from);
    while (unique && lone.has(loneEmblem(first.design))) first = drawOne(random, from);
    if (loneEmblem(first.design)) lone.add(loneEmblem(first.design));
    first.bits.copy(out, (i - start) * PACKED);
    if (svgs.length < 120) svgs.push(first.svg);
    i++;
    if (i - 1 < twins && (i - 1) % 2 === 0) {
      const bits = drawTwin(random, first, from) ?? drawOne(random, from).bits;
      bits.copy(out, (i - start) * PACKED);
      i++;
    }
    if (i % 5000 < 2 && process.send) process.send({ at: i - start });
  }
  return { bits: out, svgs };
}

async function main() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { seed: { type: "string", default: "1" }, twins: { type: "string", default: "0" }, processes: { type: "string", default: "2" }, svg: { type: "string" } },
  });
  const [split, countText, file] = positionals;
  const count = Number(countText);
  if (!(split in splitSeeds) || !Number.isInteger(count) || count < 1 || !file)
    throw new Error(`Give a split (train, validation, test), a count and a file. Received ${positionals.join(" ")}`);
  const twins = Math.round((count * Number(values.twins)) / 2) * 2;
  const unique = split !== "train";
  const processes = unique ? 1 : Number(values.processes);
  const share = Math.ceil(count / processes / 2) * 2;
  const ranges = Array.from({ length: processes }, (_, k) => ({ split, seed: Number(values.seed), start: k * share, end: Math.min(count, (k + 1) * share), twins, unique }));
  const drawn = processes === 1 ? ranges.map(drawRange) : await Promise.all(ranges.map((range) => new Promise((resolve, reject) => {
    const child = fork(new URL(import.meta.url), ["--range"], { serialization: "advanced" });
    child.on("message", (message) => {
      if (message.at) console.error(`${message.at} of ${range.end - range.start} from ${range.start}`);
      else resolve({ bits: Buffer.from(message.bits), svgs: message.svgs });
    });
    child.on("error", reject);
    child.on("exit", (code) => code && reject(new Error(`a drawing process ended with ${code}`)));
    child.send(range);
  })));
  const all = Buffer.concat(drawn.map((d) => d.bits));
  writeFileSync(file, gzipSync(all, { level: 6 }));
  if (values.svg) writeFileSync(values.svg, JSON.stringify(drawn[0].svgs));
  console.log(JSON.stringify({ split, count, twins, seed: Number(values.seed), sha256: createHash("sha256").update(all).digest("hex") }));
}

if (process.argv[2] === "--range")
  process.once("message", (range) => {
    const { bits, svgs } = drawRange(range);
    process.send({ bits, svgs }, () => process.exit(0));
  });
else await main();
