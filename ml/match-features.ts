import { type Features, pixel } from "./features.ts";
import { type Homography, through } from "./homography.ts";
import { freeing, type OpenCv } from "./opencv.ts";

/** Numbers of features of the query and of the reference that are held to be the same. */
export type Pairs = readonly (readonly [query: number, reference: number])[];

/** Nearest to second nearest descriptor. Source: D. G. Lowe, IJCV 60, 2004, section 7.1, where it is 0.8. */
const RATIO = 0.85;
/** Close-up pixels round the place where a feature should be. */
const AROUND = 5;
/** Bits of 486 by which two descriptors of one feature differ at most, where its place is known. */
const MOST_BITS = 130;

/** Pairs whose descriptors are far more alike than the next best. */
export function matchByRatio(cv: OpenCv, query: Features, reference: Features): Pairs {
  return freeing(cv, (keep) => {
    const matcher = keep(new cv.BFMatcher(cv.NORM_HAMMING, false));
    const found = keep(new cv.DMatchVectorVector());
    const rows = ({ count, bytes, descriptors }: Features) => {
      const mat = keep(new cv.Mat(count, bytes, cv.CV_8UC1));
      mat.data.set(descriptors);
      return mat;
    };
    matcher.knnMatch(rows(query), rows(reference), found, 2);
    const pairs: [number, number][] = [];
    for (let i = 0; i < found.size(); i++) {
      const nearest = found.get(i);
      if (nearest.size() === 2) {
        const best = nearest.get(0);
        if (best.distance < RATIO * nearest.get(1).distance) pairs.push([best.queryIdx, best.trainIdx]);
      }
      nearest.delete();
    }
    return pairs;
  });
}

/**
 * Pairs whose reference feature lies near where a homography puts the query's, the most alike of those there;
 * each feature of the reference is taken once.
 * @param h between close-up pixels
 */
export function matchNear(query: Features, reference: Features, h: Homography): Pairs {
  const taken = new Map<number, { readonly q: number; readonly bits: number }>();
  for (let q = 0; q < query.count; q++) {
    const [x, y] = through(h, ...pixel(query, q));
    let best = -1;
    let least = MOST_BITS;
    for (let r = 0; r < reference.count; r++) {
      const [u, v] = pixel(reference, r);
      if (Math.abs(u - x) > AROUND || Math.abs(v - y) > AROUND) continue;
      const bits = differing(query, q, reference, r);
      if (bits < least) {
        least = bits;
        best = r;
      }
    }
    const before = taken.get(best);
    if (best >= 0 && (!before || least < before.bits)) taken.set(best, { q, bits: least });
  }
  return [...taken].map(([r, { q }]) => [q, r]);
}

const ONES = Uint8Array.from({ length: 256 }, (_, byte) => byte.toString(2).replaceAll("0", "").length);

function differing(a: Features, i: number, b: Features, j: number): number {
  let bits = 0;
  for (let k = 0; k < a.bytes; k++)
    bits += ONES[(a.descriptors[i * a.bytes + k] ?? 0) ^ (b.descriptors[j * b.bytes + k] ?? 0)] ?? 0;
  return bits;
}
