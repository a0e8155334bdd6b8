import { readFileSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { embed } from "#ml/embed";
import { decode, prepare, type Region } from "#ml/preprocess";

// The arrays and vectors were written by ml/train/fixtures.py, in Python with Pillow and PyTorch.
const FOLDER = join(import.meta.dirname, "..", "fixtures", "preprocess");

type Fixture = {
  name: string;
  what: string;
  photograph: string;
  picture: string;
  region: Omit<Region, "turn"> | null;
  turn: number;
  vector?: number[];
};

const { fixtures } = JSON.parse(readFileSync(join(FOLDER, "fixtures.json"), "utf8")) as { fixtures: Fixture[] };

const trainers = (fixture: Fixture): Float32Array => {
  const bytes = readFileSync(join(FOLDER, fixture.picture));
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
};

const ours = async (fixture: Fixture): Promise<Float32Array> => {
  const path = join(FOLDER, fixture.photograph);
  const patch = fixture.region
    ? await decode(path, { ...fixture.region, turn: fixture.turn })
    : await decode(path);
  return prepare(patch);
};

const meanDifference = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  expect(a.length).toBe(b.length);
  return Array.from(a, (value, i) => Math.abs(value - (b[i] ?? Number.NaN))).reduce((x, y) => x + y) / a.length;
};

const cosine = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  const dot = (x: ArrayLike<number>, y: ArrayLike<number>) =>
    Array.from(x, (v, i) => v * (y[i] ?? Number.NaN)).reduce((s, v) => s + v, 0);
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
};

describe("preprocessing, against the trainer's arrays", () => {
  it("has fixtures to compare with", () => expect(fixtures.length).toBeGreaterThanOrEqual(6));

  it.each(fixtures)("sees $name as the trainer does: $what", async (fixture) => {
    expect(meanDifference(await ours(fixture), trainers(fixture))).toBeLessThan(0.03);
  });

  it.each(fixtures.filter((f) => f.vector))("gives $name the trainer's vector", async (fixture) => {
    const [vector] = await embed([await ours(fixture)]);
    expect(cosine(vector ?? [], fixture.vector ?? [])).toBeGreaterThan(0.999);
  });
});
