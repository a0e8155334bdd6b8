import type { CloseUp } from "./close-up.ts";
import { freeing, type OpenCv } from "./opencv.ts";

/** Local features of a close-up, out of the library's memory, so that they may be kept. */
export type Features = {
  /** x and y in photograph pixels, feature by feature. */
  readonly points: Float32Array;
  /** One row of `bytes` bytes a feature, compared by Hamming distance. */
  readonly descriptors: Uint8Array;
  readonly bytes: number;
  readonly count: number;
  /** Photograph pixels to one of the close-up's, so that thresholds can be stated in the latter. */
  readonly pixel: number;
};

/** Response of the detector below which nothing is a feature; the library's own 0.001 leaves worn marks bare. */
const THRESHOLD = 0.0004;

/**
 * AKAZE features. Source: P. F. Alcantarilla, J. Nuevo and A. Bartoli, Fast Explicit Diffusion for Accelerated
 * Features in Nonlinear Scale Spaces, BMVC 2013, in OpenCV's implementation.
 * @param most how many at most, those of strongest response
 */
export function findFeatures(cv: OpenCv, close: CloseUp, most: number): Features {
  return freeing(cv, (keep) => {
    const image = keep(new cv.Mat(close.height, close.width, cv.CV_8UC1));
    image.data.set(close.grey);
    const detector = keep(new cv.AKAZE());
    detector.setThreshold(THRESHOLD);
    const found = keep(new cv.KeyPointVector());
    const described = keep(new cv.Mat());
    detector.detectAndCompute(image, keep(new cv.Mat()), found, described);
    const all = Array.from({ length: found.size() }, (_, index) => ({ index, ...found.get(index) }));
    const best = all.sort((a, b) => b.response - a.response || a.index - b.index).slice(0, most);
    const bytes = described.cols;
    const points = new Float32Array(best.length * 2);
    const descriptors = new Uint8Array(best.length * bytes);
    for (const [to, { index, pt }] of best.entries()) {
      // The library counts from a pixel's centre, a region from its corner.
      points[2 * to] = close.left + (pt.x + 0.5) / close.scaleX;
      points[2 * to + 1] = close.top + (pt.y + 0.5) / close.scaleY;
      descriptors.set(described.data.subarray(index * bytes, (index + 1) * bytes), to * bytes);
    }
    return { points, descriptors, bytes, count: best.length, pixel: 2 / (close.scaleX + close.scaleY) };
  });
}

/** Where a feature lies, in photograph pixels. */
export function at({ points }: Features, index: number): [number, number] {
  return [points[2 * index] ?? 0, points[2 * index + 1] ?? 0];
}

/** Where a feature lies, in pixels of the close-up's size counted from the photograph's corner. */
export function pixel(features: Features, index: number): [number, number] {
  const [x, y] = at(features, index);
  return [x / features.pixel, y / features.pixel];
}
