import { type InferenceSession, Tensor } from "onnxruntime-node";
import type { Grey } from "../square.ts";
import { resample } from "./resample.ts";
import type { TextLine } from "./text-lines.ts";

/** A letter that the recogniser read, and how sure it is, 0 to 1. */
export type Letter = { readonly sign: string; readonly sure: number };

/** The recogniser sees lines 48 pixels high, from -1 to 1: PaddleOCR, tools/infer/predict_rec.py, resize_norm_img. */
const HEIGHT = 48;
const NARROWEST = 96;
const WIDEST = 1600;

/**
 * Which sign each of the recogniser's classes stands for, as far as a mark's transcription would use it: letters of
 * the Latin alphabet, digits, `&`, full stop, hyphen, apostrophe and comma. The first class is "no letter here".
 * @param dictionary the file that comes with the network, a sign a line
 */
export function readAlphabet(dictionary: string): readonly (string | null)[] {
  const signs = dictionary.split("\n").filter((line) => line !== "");
  const plain = [...signs, " "].map((sign) => {
    // Wide forms, as in Chinese print, are the same letters.
    const folded = sign.normalize("NFKC");
    return /^[\p{Script=Latin}\p{Nd}&.,' -]$/u.test(folded) ? folded : null;
  });
  return [null, ...plain];
}

/**
 * Reads a line along its length.
 * @param turn degrees clockwise from level in which it is read: the line's own angle, or half a turn more
 */
export async function spellLine(
  recogniser: InferenceSession,
  alphabet: readonly (string | null)[],
  picture: Grey,
  line: TextLine,
  turn: number,
): Promise<readonly Letter[]> {
  const strip = cutLine(picture, line, turn);
  const area = strip.width * HEIGHT;
  const input = new Float32Array(3 * area);
  for (let channel = 0; channel < 3; channel++)
    for (let i = 0; i < area; i++) input[channel * area + i] = ((strip.values[i] ?? 0) - 0.5) / 0.5;
  const [inputName = "", outputName = ""] = [recogniser.inputNames[0], recogniser.outputNames[0]];
  const answer = await recogniser.run({
    [inputName]: new Tensor("float32", input, [1, 3, HEIGHT, strip.width]),
  });
  const output = answer[outputName];
  const classes = output?.dims[2] ?? 0;
  if (!(output?.data instanceof Float32Array) || classes !== alphabet.length)
    throw new Error(`The recogniser must tell ${alphabet.length} signs apart. Received ${classes}.`);
  return spell(output.data, alphabet);
}

/** The line lying level, 48 pixels high. */
function cutLine(picture: Grey, line: TextLine, turn: number): Grey {
  const standing = Math.abs(turn - line.angle) % 180 > 45;
  const [length, height] = standing ? [line.height, line.length] : [line.length, line.height];
  const scale = height / HEIGHT;
  const width = Math.round(Math.min(WIDEST, Math.max(NARROWEST, length / scale)));
  const cos = Math.cos((turn * Math.PI) / 180) * scale;
  const sin = Math.sin((turn * Math.PI) / 180) * scale;
  const places = (x: number, y: number) => {
    const [u, v] = [x - width / 2, y - HEIGHT / 2];
    return [line.centreX + u * cos - v * sin, line.centreY + u * sin + v * cos] as const;
  };
  return resample(picture, width, HEIGHT, places, scale > 1.5 ? 2 : 1);
}

/**
 * The likeliest sign of each step; the same sign in steps next to each other is one letter, and as sure as its surest
 * step. Source: Graves et al., Connectionist Temporal Classification, ICML 2006, best path decoding.
 */
function spell(steps: Float32Array, alphabet: readonly (string | null)[]): readonly Letter[] {
  const letters: Letter[] = [];
  let before = "";
  for (let start = 0; start < steps.length; start += alphabet.length) {
    const { sign, sure } = likeliest(steps.subarray(start, start + alphabet.length), alphabet);
    const last = letters.at(-1);
    if (sign !== "" && sign === before && last)
      letters[letters.length - 1] = { sign, sure: Math.max(last.sure, sure) };
    else if (sign !== "") letters.push({ sign, sure });
    before = sign;
  }
  return letters;
}

function likeliest(step: Float32Array, alphabet: readonly (string | null)[]): Letter {
  let best: Letter = { sign: "", sure: step[0] ?? 0 };
  for (const [index, sign] of alphabet.entries()) {
    const sure = step[index] ?? 0;
    if (sign !== null && sure > best.sure) best = { sign, sure };
  }
  return best;
}
