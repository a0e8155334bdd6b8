import { createRequire } from "node:module";

/**
 * The part of OpenCV 4.5.2 that is used here, as its JavaScript build offers it. Whatever is `Freed` lies in
 * WebAssembly's memory, which nothing collects: make it with `keep` inside `freeing`.
 * Source: https://docs.opencv.org/4.5.2/ (modules core, imgproc, features2d, calib3d).
 */
export type Freed = { delete(): void };

type Mat = Freed & {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  empty(): boolean;
};

type Point = { readonly x: number; readonly y: number };
type KeyPoint = { readonly pt: Point; readonly response: number };
type Match = { readonly queryIdx: number; readonly trainIdx: number; readonly distance: number };
type List<T> = Freed & { size(): number; get(index: number): T };
type Size = { readonly width: number; readonly height: number };
type TurnedBox = {
  readonly center: { readonly x: number; readonly y: number };
  readonly size: Size;
  readonly angle: number;
};
type Detector = Freed & {
  setThreshold(threshold: number): void;
  detectAndCompute(image: Mat, mask: Mat, keyPoints: List<KeyPoint>, descriptors: Mat): void;
};
type Matcher = Freed & {
  knnMatch(query: Mat, train: Mat, matches: List<List<Match> & Freed>, k: number): void;
};

export type OpenCv = {
  readonly Mat: new (rows?: number, columns?: number, type?: number) => Mat;
  readonly AKAZE: new () => Detector;
  readonly BFMatcher: new (norm: number, crossCheck: boolean) => Matcher;
  readonly KeyPointVector: new () => List<KeyPoint>;
  readonly DMatchVectorVector: new () => List<List<Match> & Freed>;
  readonly MatVector: new () => List<Mat>;
  readonly NORM_HAMMING: number;
  readonly USAC_ACCURATE: number;
  readonly RETR_LIST: number;
  readonly CHAIN_APPROX_SIMPLE: number;
  readonly CV_8UC1: number;
  readonly CV_32FC2: number;
  matFromArray(rows: number, columns: number, type: number, values: ArrayLike<number>): Mat;
  findContours(image: Mat, contours: List<Mat>, hierarchy: Mat, mode: number, method: number): void;
  /** The smallest turned box round points; its angle in degrees clockwise, as y runs down. */
  minAreaRect(points: Mat): TurnedBox;
  findHomography(
    from: Mat,
    to: Mat,
    method: number,
    threshold: number,
    mask: Mat,
    iterations: number,
    confidence: number,
  ): Mat;
  exceptionFromPtr(pointer: number): { readonly msg: string };
};

// Kept on the global object: a bundler may give each route its own copy of this module, and the library with its
// memory takes about 50 MB. Required, and boxed, because it has a `then` that a promise would wait on for ever.
const held = globalThis as typeof globalThis & {
  countermarkOpenCv?: Promise<{ readonly cv: OpenCv }> | undefined;
};

/** The library; takes about a second the first time. */
export function openCv(): Promise<{ readonly cv: OpenCv }> {
  held.countermarkOpenCv ??= load().catch((error: unknown) => {
    held.countermarkOpenCv = undefined;
    throw error;
  });
  return held.countermarkOpenCv;
}

/**
 * Runs work and frees everything it kept, also when it fails.
 * @throws Error in the library's words, where the library throws a bare number
 */
export function freeing<T>(cv: OpenCv, work: (keep: <F extends Freed>(made: F) => F) => T): T {
  const made: Freed[] = [];
  try {
    return work((each) => {
      made.push(each);
      return each;
    });
  } catch (error) {
    throw typeof error === "number" ? new Error(cv.exceptionFromPtr(error).msg) : error;
  } finally {
    for (const each of made.reverse()) each.delete();
  }
}

type Loading = OpenCv & { onRuntimeInitialized?: () => void };

/** Until its WebAssembly has been compiled, the library has no `Mat`. */
const isReady = (cv: Loading): boolean => "Mat" in cv;

async function load(): Promise<{ readonly cv: OpenCv }> {
  const exceptions = process.listeners("uncaughtException");
  const rejections = process.listeners("unhandledRejection");
  const cv: Loading = createRequire(import.meta.url)("@techstark/opencv-js");
  // It would end the process on any rejection that nobody handles, whoever caused it.
  for (const listener of process.listeners("uncaughtException"))
    if (!exceptions.includes(listener)) process.removeListener("uncaughtException", listener);
  for (const listener of process.listeners("unhandledRejection"))
    if (!rejections.includes(listener)) process.removeListener("unhandledRejection", listener);
  if (!isReady(cv))
    await new Promise<void>((ready) => {
      cv.onRuntimeInitialized = ready;
    });
  return { cv };
}
