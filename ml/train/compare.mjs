/**
 * What half-precision weights cost: node compare.mjs SINGLE.onnx HALF.onnx REFERENCES QUERIES [COUNT]
 *
 * Embeds the first COUNT classes (default 300) of two folders of <class>/<image> with both files and
 * prints the lowest cosine between the two answers to one picture, and recall@1 of each (upright).
 * Wants onnxruntime-node and sharp from the project's own packages.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import ort from "onnxruntime-node";
import sharp from "sharp";

const SIDE = 160;
const [single, half, references, queries, countText = "300"] = process.argv.slice(2);
const count = Number(countText);
if (!queries || !(count > 0)) throw new Error(`Give two ONNX files and two folders. Received ${process.argv.slice(2).join(" ")}`);

async function pictureOf(file) {
  const { data, info } = await sharp(file).flatten({ background: "#fff" }).resize(SIDE, SIDE, { fit: "fill", kernel: "linear" }).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const grey = new Float32Array(SIDE * SIDE);
  for (let p = 0; p < grey.length; p++) {
    const at = p * info.channels;
    grey[p] = info.channels < 3 ? data[at] / 255 : (0.299 * data[at] + 0.587 * data[at + 1] + 0.114 * data[at + 2]) / 255;
  }
  const mean = grey.reduce((a, b) => a + b, 0) / grey.length;
  const deviation = Math.sqrt(grey.reduce((a, b) => a + (b - mean) ** 2, 0) / grey.length);
  return grey.map((v) => (v - mean) / (deviation + 0.02));
}

const imagesOf = (folder) => readdirSync(folder).sort().slice(0, count).map((name) => join(folder, name, readdirSync(join(folder, name))[0]));
const dot = (a, b) => a.reduce((sum, v, i) => sum + v * b[i], 0);

async function vectorsOf(session, pictures) {
  const vectors = [];
  for (const picture of pictures) {
    const { z } = await session.run({ x: new ort.Tensor("float32", picture, [1, 1, SIDE, SIDE]) });
    vectors.push(Float32Array.from(z.data));
  }
  return vectors;
}

const options = { intraOpNumThreads: 1 };
const sessions = [await ort.InferenceSession.create(single, options), await ort.InferenceSession.create(half, options)];
const known = await Promise.all(imagesOf(references).map(pictureOf));
const asked = await Promise.all(imagesOf(queries).map(pictureOf));
const found = [];
for (const session of sessions) found.push({ known: await vectorsOf(session, known), asked: await vectorsOf(session, asked) });
const [a, b] = found;
const cosines = [...a.known.map((v, i) => dot(v, b.known[i])), ...a.asked.map((v, i) => dot(v, b.asked[i]))];
const recall = ({ known, asked }) => asked.filter((q, i) => known.every((r, j) => j === i || dot(q, r) < dot(q, known[i]))).length / asked.length;
console.log(`pictures ${cosines.length}, lowest cosine ${Math.min(...cosines).toFixed(6)}, recall@1 single ${recall(a).toFixed(4)} half ${recall(b).toFixed(4)}`);
