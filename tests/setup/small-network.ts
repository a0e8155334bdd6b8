import { createHash } from "node:crypto";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";

const SIDE = 160;

/**
 * Writes a model of a kind of its own, unlike the shipped one: a picture in so many grey squares a side, at unit length.
 * Field numbers: onnx.proto of ONNX 1.14 (IR version 8, operators of version 13).
 * @param squares a vector has squares * squares numbers
 */
export async function writeSmallModel(folder: string, version: string, squares: number): Promise<string> {
  const network = smallNetwork(1, SIDE, squares);
  const facts = {
    name: "squares",
    version,
    file: "squares.onnx",
    sha256: createHash("sha256").update(network).digest("hex"),
    input: "x",
    output: "z",
    side: SIDE,
    dimension: squares * squares,
    queryTurns: 4,
    likeness: { veryClose: 0.99, close: 0.95, some: 0.9, noneBelow: 0.5 },
  };
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, facts.file), network);
  await writeFile(join(folder, "model.json"), JSON.stringify(facts));
  return `${facts.name}@${version}`;
}

/** An ONNX network that takes n pictures of channels x side x side and gives their averages over squares. */
export function smallNetwork(channels: number, side: number, squares: number): Buffer {
  const window = side / squares;
  return modelProto(
    [
      node("AveragePool", "x", "pooled", [
        ints("kernel_shape", [window, window]),
        ints("strides", [window, window]),
      ]),
      node("Flatten", "pooled", "flat", [int("axis", 1)]),
      node("LpNormalization", "flat", "z", [int("axis", 1), int("p", 2)]),
    ],
    ["n", channels, side, side],
    channels * squares * squares,
  );
}

const bytes = (...parts: (Buffer | readonly number[])[]) =>
  Buffer.concat(parts.map((part) => Buffer.from(part)));

function varint(value: number): Buffer {
  const low: number[] = [];
  for (let rest = value; ; rest = Math.floor(rest / 128)) {
    low.push(rest < 128 ? rest : (rest % 128) + 128);
    if (rest < 128) return Buffer.from(low);
  }
}

const number = (field: number, value: number) => bytes(varint(field * 8), varint(value));
const block = (field: number, content: Buffer) =>
  bytes(varint(field * 8 + 2), varint(content.length), content);
const text = (field: number, value: string) => block(field, Buffer.from(value));

const INT = 2;
const INTS = 7;
const int = (name: string, value: number) => bytes(text(1, name), number(3, value), number(20, INT));
const ints = (name: string, values: readonly number[]) =>
  bytes(text(1, name), ...values.map((value) => number(8, value)), number(20, INTS));

const node = (operator: string, input: string, output: string, attributes: readonly Buffer[]) =>
  bytes(text(1, input), text(2, output), text(4, operator), ...attributes.map((a) => block(5, a)));

const FLOAT = 1;
function value(name: string, dimensions: readonly (number | string)[]): Buffer {
  const shape = dimensions.map((d) => block(1, typeof d === "number" ? number(1, d) : text(2, d)));
  const tensor = bytes(number(1, FLOAT), block(2, bytes(...shape)));
  return bytes(text(1, name), block(2, block(1, tensor)));
}

function modelProto(
  nodes: readonly Buffer[],
  input: readonly (number | string)[],
  dimension: number,
): Buffer {
  const graph = bytes(
    ...nodes.map((n) => block(1, n)),
    text(2, "squares"),
    block(11, value("x", input)),
    block(12, value("z", ["n", dimension])),
  );
  return bytes(number(1, 8), block(7, graph), block(8, bytes(text(1, ""), number(2, 13))));
}
