import { type InferenceSession, Tensor } from "onnxruntime-node";
import { freeing, type OpenCv } from "../opencv.ts";
import type { Grey } from "../square.ts";
import { resample } from "./resample.ts";

/** A line of writing: a turned box whose longer side is `length`, in pixels of the picture. */
export type TextLine = {
  readonly centreX: number;
  readonly centreY: number;
  readonly length: number;
  readonly height: number;
  /** Degrees clockwise from level, -90 to 90. */
  readonly angle: number;
  /** How surely the detector saw writing there, 0 to 1. */
  readonly score: number;
};

/**
 * The detector's own post-processing: what is above 0.3 is writing; a line's mean is above 0.5; what the network marks
 * is the shrunken core of a line, widened by 1.6 times area over circumference. Source: PaddleOCR (Apache-2.0),
 * ppocr/postprocess/db_postprocess.py, where the last two are 0.6 or 0.7 and 1.5 or 2.0.
 */
const WRITING = 0.3;
const SURE = 0.5;
const WIDENED = 1.6;
const SMALLEST = 3;
/** Lines looked at, the surest. */
const MOST = 16;
/** The means and deviations that the network was trained with: PaddleOCR, tools/infer/predict_det.py, NormalizeImage. */
const MEAN = [0.485, 0.456, 0.406] as const;
const DEVIATION = [0.229, 0.224, 0.225] as const;

/** Finds lines of writing in a picture, the surest first. */
export async function findTextLines(
  cv: OpenCv,
  detector: InferenceSession,
  picture: Grey,
): Promise<readonly TextLine[]> {
  // The network halves a picture five times.
  const width = Math.max(32, Math.round(picture.width / 32) * 32);
  const height = Math.max(32, Math.round(picture.height / 32) * 32);
  const [acrossOne, downOne] = [picture.width / width, picture.height / height];
  const fitted = resample(picture, width, height, (x, y) => [x * acrossOne, y * downOne]);
  const map = await detect(detector, fitted);
  return linesOf(cv, map, width, height).map((line) => ({
    ...line,
    centreX: line.centreX * acrossOne,
    centreY: line.centreY * downOne,
  }));
}

async function detect(detector: InferenceSession, { values, width, height }: Grey): Promise<Float32Array> {
  const area = width * height;
  const input = new Float32Array(3 * area);
  for (const [channel, mean] of MEAN.entries())
    for (let i = 0; i < area; i++)
      input[channel * area + i] = ((values[i] ?? 0) - mean) / (DEVIATION[channel] ?? 1);
  const [inputName = "", outputName = ""] = [detector.inputNames[0], detector.outputNames[0]];
  const answer = await detector.run({ [inputName]: new Tensor("float32", input, [1, 3, height, width]) });
  const data = answer[outputName]?.data;
  if (!(data instanceof Float32Array) || data.length !== area)
    throw new Error(`The text detector must answer ${area} numbers. Received ${data?.length}.`);
  return data;
}

function linesOf(cv: OpenCv, map: Float32Array, width: number, height: number): TextLine[] {
  return freeing(cv, (keep) => {
    const mask = keep(new cv.Mat(height, width, cv.CV_8UC1));
    mask.data.set(map.map((value) => (value > WRITING ? 255 : 0)));
    const contours = keep(new cv.MatVector());
    cv.findContours(mask, contours, keep(new cv.Mat()), cv.RETR_LIST, cv.CHAIN_APPROX_SIMPLE);
    const lines: TextLine[] = [];
    for (let i = 0; i < contours.size(); i++) {
      const contour = contours.get(i);
      const box = cv.minAreaRect(contour);
      contour.delete();
      const core = lineOf(box.center.x, box.center.y, box.size.width, box.size.height, box.angle);
      if (core.height < SMALLEST) continue;
      const score = meanInside(map, width, height, core);
      if (score < SURE) continue;
      const by = (WIDENED * core.length * core.height) / (core.length + core.height);
      lines.push({ ...core, length: core.length + by, height: core.height + by, score });
    }
    return lines.sort((a, b) => b.score * b.length - a.score * a.length).slice(0, MOST);
  });
}

function lineOf(centreX: number, centreY: number, width: number, height: number, angle: number): TextLine {
  const lying = width >= height;
  const turned = lying ? angle : angle - 90;
  // A line has no beginning yet: half a turn more is the same line.
  const level = turned > 90 ? turned - 180 : turned <= -90 ? turned + 180 : turned;
  const [length, across] = lying ? [width, height] : [height, width];
  return { centreX, centreY, length, height: across, angle: level, score: 0 };
}

function meanInside(map: Float32Array, width: number, height: number, line: TextLine): number {
  const cos = Math.cos((line.angle * Math.PI) / 180);
  const sin = Math.sin((line.angle * Math.PI) / 180);
  let [sum, count] = [0, 0];
  for (let v = 0.5 - line.height / 2; v < line.height / 2; v++)
    for (let u = 0.5 - line.length / 2; u < line.length / 2; u++) {
      const x = Math.round(line.centreX + u * cos - v * sin);
      const y = Math.round(line.centreY + u * sin + v * cos);
      if (x < 0 || y < 0 || x >= width || y >= height) continue;
      sum += map[y * width + x] ?? 0;
      count++;
    }
  return count === 0 ? 0 : sum / count;
}
