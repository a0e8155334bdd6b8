import { InferenceSession, Tensor } from "onnxruntime-node";
import { readNetwork, shippedFolder } from "./model.ts";
import { type Box, overlap } from "./overlap.ts";
import { decode, type Region } from "./preprocess.ts";
import { type RegionsFacts, readRegionsFacts } from "./regions-model.ts";
import { letterboxOf, prepareWhole } from "./whole.ts";

/** A place in a photograph where a mark may be. */
export type Proposal = {
  /** In pixels of the upright photograph, not turned. */
  readonly region: Region;
  /** The probability that the region overlaps the mark's box by half or more, as scenes drawn for it go. */
  readonly confidence: number;
};

type Network = { readonly facts: RegionsFacts; readonly session: InferenceSession };
type Place = { readonly score: number; readonly box: Box };

const MOST = 3;
/** Two proposals overlap less than this. */
const APART = 0.45;
/** The best is always proposed; others only when they are this likely. */
const WORTH_A_LOOK = 0.03;
/** Places considered, best first. */
const CONSIDERED = 60;
/** The smallest proposal, in the network's pixels. */
const SMALLEST = 4;

// Kept on the global object: a bundler may give each route its own copy of this module.
const held = globalThis as typeof globalThis & { countermarkRegions?: Promise<Network> | undefined };

/**
 * Finds where the mark is in a whole photograph.
 * @param photograph an encoded image in any format sharp reads, or the path of one
 * @returns up to three proposals, best first
 * @throws Error when the photograph cannot be decoded, or the network not be loaded
 */
export async function proposeRegions(photograph: Uint8Array | string): Promise<Proposal[]> {
  const { facts, session } = await network();
  const { side } = facts;
  const patch = await decode(photograph);
  const picture = prepareWhole(patch, side);
  const answer = await session.run({ [facts.input]: new Tensor("float32", picture, [1, 1, side, side]) });
  const data = answer[facts.output]?.data;
  if (!(data instanceof Float32Array) || data.length !== 5 * facts.cells ** 2)
    throw new Error(`${facts.id}: must answer 5 x ${facts.cells} x ${facts.cells} numbers.`);
  // From the square's pixels to the photograph's.
  const scale = patch.square.side / side;
  const { across, down } = letterboxOf(patch);
  const width = across * patch.square.side;
  const height = down * patch.square.side;
  const left = patch.square.centreX - patch.square.side / 2;
  const top = patch.square.centreY - patch.square.side / 2;
  const proposals = best(placesOf(data, facts)).map(({ box, score }) => ({
    region: {
      ...within(
        {
          x: left + box.x * scale,
          y: top + box.y * scale,
          width: box.width * scale,
          height: box.height * scale,
        },
        { width, height },
      ),
      turn: 0,
    },
    confidence: 1 / (1 + Math.exp(-(facts.confidence.offset + facts.confidence.slope * score))),
  }));
  return proposals.filter(({ confidence }, i) => i === 0 || confidence >= WORTH_A_LOOK);
}

/** The facts of the network that finds marks; loads and verifies it the first time. */
export async function regionsFacts(): Promise<RegionsFacts> {
  return (await network()).facts;
}

/** The places that score higher than their eight neighbours, highest first. */
function placesOf(data: Float32Array, facts: RegionsFacts): Place[] {
  const { cells } = facts;
  const at = (channel: number, row: number, column: number) =>
    row < 0 || column < 0 || row >= cells || column >= cells
      ? Number.NEGATIVE_INFINITY
      : (data[(channel * cells + row) * cells + column] ?? 0);
  const peaks: { readonly score: number; readonly row: number; readonly column: number }[] = [];
  for (let row = 0; row < cells; row++)
    for (let column = 0; column < cells; column++) {
      const score = at(0, row, column);
      const around = steps(1).map(([dy, dx]) => at(0, row + dy, column + dx));
      if (score >= Math.max(...around)) peaks.push({ score, row, column });
    }
  return peaks
    .sort((a, b) => b.score - a.score)
    .slice(0, CONSIDERED)
    .map(({ score, row, column }) => ({ score, box: boxNear(at, row, column, facts) }));
}

type At = (channel: number, row: number, column: number) => number;

/** The mean of the boxes that a place and those around it see, weighted by the squares of their scores, 0 to 1. */
function boxNear(at: At, row: number, column: number, { cells, side, unit }: RegionsFacts): Box {
  const cell = side / cells;
  const edges = [0, 0, 0, 0];
  let whole = 0;
  for (const [dy, dx] of steps(2)) {
    const [r, c] = [row + dy, column + dx];
    const weight = (1 / (1 + Math.exp(-at(0, r, c)))) ** 2;
    if (weight === 0) continue;
    const reach = (channel: number) => unit * Math.exp(Math.min(2.2, Math.max(-5, at(channel, r, c))));
    const [x, y] = [(c + 0.5) * cell, (r + 0.5) * cell];
    for (const [k, edge] of [x - reach(1), y - reach(2), x + reach(3), y + reach(4)].entries())
      edges[k] = (edges[k] ?? 0) + weight * edge;
    whole += weight;
  }
  const [left = 0, top = 0, right = 0, bottom = 0] = edges.map((edge) => edge / whole);
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The steps from a place to all within so many rows and columns, itself too. */
function steps(reach: number): (readonly [number, number])[] {
  const line = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
  return line.flatMap((dy) => line.map((dx) => [dy, dx] as const));
}

/** The best places that lie apart from one another. */
function best(places: readonly Place[]): Place[] {
  const kept: Place[] = [];
  for (const place of places) {
    if (kept.length === MOST) break;
    const { width, height } = place.box;
    if (Math.min(width, height) < SMALLEST) continue;
    if (kept.every((other) => overlap(other.box, place.box) < APART)) kept.push(place);
  }
  return kept;
}

/** The part of a box that lies in the photograph. */
function within(box: Box, photograph: { readonly width: number; readonly height: number }): Box {
  const x = Math.min(Math.max(0, box.x), photograph.width - 1);
  const y = Math.min(Math.max(0, box.y), photograph.height - 1);
  return {
    x,
    y,
    width: Math.max(1, Math.min(box.x + box.width, photograph.width) - x),
    height: Math.max(1, Math.min(box.y + box.height, photograph.height) - y),
  };
}

function network(): Promise<Network> {
  held.countermarkRegions ??= load().catch((error: unknown) => {
    // The next call tries again: the operator may have put the file right.
    held.countermarkRegions = undefined;
    throw error;
  });
  return held.countermarkRegions;
}

async function load(): Promise<Network> {
  const folder = shippedFolder();
  const facts = await readRegionsFacts(folder);
  const session = await InferenceSession.create(await readNetwork(facts, folder), {
    executionProviders: ["cpu"],
    graphOptimizationLevel: "all",
    intraOpNumThreads: 1,
    interOpNumThreads: 1,
  });
  return { facts, session };
}
