import { setImmediate } from "node:timers/promises";
import { closeUp } from "./close-up.ts";
import { at, type Features, findFeatures, pixel } from "./features.ts";
import { type Homography, isPlausible, rescaled } from "./homography.ts";
import { matchByRatio, matchNear, type Pairs } from "./match-features.ts";
import { freeing, type OpenCv, openCv } from "./opencv.ts";
import type { Region } from "./preprocess.ts";

/** A feature of the query and the feature of the reference that it is, in photograph pixels. */
type MatchedPoint = {
  readonly query: readonly [number, number];
  readonly reference: readonly [number, number];
};

/** Two photographs laid over one another, or the finding that they can't be. */
export type Alignment = {
  /** How many points agree with the homography. */
  readonly inliers: number;
  readonly points: readonly MatchedPoint[];
  /** From the query's photograph pixels to the reference's; null when none was found. */
  readonly homography: Homography | null;
  /** The homography is one between two photographs of a flat mark, and enough points agree. */
  readonly plausible: boolean;
};

/** A photograph, and the region of it that holds the mark; without one, the whole photograph. */
export type Photographed = {
  /** An encoded image in any format sharp reads, or the path of one. */
  readonly photograph: Uint8Array | string;
  readonly region: Region | null;
};

/** Pixels of a close-up's longer side, and the features taken from it, when two photographs are looked at. */
const SIDE = 800;
const MOST = 3000;
/** Close-up pixels within which a point agrees. */
const NEAR = 2;
const ITERATIONS = 5000;
const CONFIDENCE = 0.999;
/**
 * Points that must agree. Different marks of the demo had none in all of 51 pairs but a pair of variants; two
 * photographs of one mark lay visibly askew at 14 and right from 21 on (DEVELOPERS.md, Decisions).
 */
const ENOUGH = 16;

const NONE: Alignment = { inliers: 0, points: [], homography: null, plausible: false };

/**
 * Lays one photograph's mark over another's. Between its steps, of some tenths of a second each, others get a turn.
 * @throws Error when a photograph cannot be decoded or a region lies outside it
 */
export async function alignPhotographs(query: Photographed, reference: Photographed): Promise<Alignment> {
  const { cv } = await openCv();
  const find = async ({ photograph, region }: Photographed) => {
    const features = findFeatures(cv, await closeUp(photograph, region, SIDE), MOST);
    await setImmediate();
    return features;
  };
  return verify(cv, await find(query), await find(reference));
}

/**
 * Lays features over features: matched by a ratio test, a homography by the library's robust estimator, matched a
 * second time near where it says they should be, and a homography of those.
 */
export function verify(cv: OpenCv, query: Features, reference: Features): Alignment {
  if (query.count < 4 || reference.count < 4) return NONE;
  const first = estimate(cv, query, reference, matchByRatio(cv, query, reference));
  if (!first || !isPlausible(first.h, boxOf(query, first.pairs))) return NONE;
  const second = estimate(cv, query, reference, matchNear(query, reference, first.h));
  const best = second && second.pairs.length >= first.pairs.length ? second : first;
  const plausible = best.pairs.length >= ENOUGH && isPlausible(best.h, boxOf(query, best.pairs));
  return {
    inliers: best.pairs.length,
    points: best.pairs.map(([q, r]) => ({ query: at(query, q), reference: at(reference, r) })),
    homography: rescaled(best.h, query.pixel, reference.pixel),
    plausible,
  };
}

/** The homography between close-up pixels that most pairs agree with, and those pairs. */
function estimate(cv: OpenCv, query: Features, reference: Features, pairs: Pairs) {
  // Four pairs always agree with some homography.
  if (pairs.length < 5) return null;
  return freeing(cv, (keep) => {
    const points = (of: Features, which: 0 | 1) => {
      const values = pairs.flatMap((pair) => pixel(of, pair[which]));
      return keep(cv.matFromArray(pairs.length, 1, cv.CV_32FC2, values));
    };
    const agree = keep(new cv.Mat());
    const [from, to] = [points(query, 0), points(reference, 1)];
    const found = keep(cv.findHomography(from, to, cv.USAC_ACCURATE, NEAR, agree, ITERATIONS, CONFIDENCE));
    if (found.empty()) return null;
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, j = 0] = found.data64F;
    const h: Homography = [a, b, c, d, e, f, g, i, j];
    return { h, pairs: pairs.filter((_, k) => agree.data[k] !== 0) };
  });
}

/** The corners of the box around the query's matched features, in close-up pixels. */
function boxOf(query: Features, pairs: Pairs) {
  const xs = pairs.map(([q]) => pixel(query, q)[0]);
  const ys = pairs.map(([q]) => pixel(query, q)[1]);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ] as const;
}
