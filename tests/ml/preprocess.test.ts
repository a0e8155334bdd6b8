import { readFileSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { embed } from "#ml/embed";
import { decode, type Patch, prepare, type Region } from "#ml/preprocess";
import { cosine, meanDifference } from "./vectors.ts";

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

const { fixtures } = JSON.parse(readFileSync(join(FOLDER, "fixtures.json"), "utf8")) as {
  fixtures: Fixture[];
};

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

describe("preprocessing, against the trainer's arrays", () => {
  it("has fixtures to compare with", () => expect(fixtures.length).toBeGreaterThanOrEqual(6));

  it.each(fixtures)("sees $name as the trainer does: $what", async (fixture) => {
    expect(meanDifference(await ours(fixture), trainers(fixture))).toBeLessThan(0.03);
  });

  it.each(fixtures.filter((f) => f.vector))("gives $name the trainer's vector", async (fixture) => {
    const [described] = await embed([await ours(fixture)]);
    const part = (from: number, to: number) =>
      cosine([...(described?.vector ?? [])].slice(from, to), (fixture.vector ?? []).slice(from, to));
    expect(part(0, 256)).toBeGreaterThan(0.999);
    expect(part(256, 512)).toBeGreaterThan(0.999);
  });
});

/** A photograph with fine grain, rings of many widths and an L that shows which way is up. */
async function scene(width: number, height: number): Promise<Buffer> {
  let state = 20260101;
  const next = () => {
    state = (state * 1103515245 + 12345) & 0x7fffffff;
    return state >> 8;
  };
  const grain = Uint8Array.from({ length: width * height * 3 }, () => 96 + (next() & 63));
  const rings = Array.from(
    { length: 40 },
    (_, i) =>
      `<circle cx="${next() % width}" cy="${next() % height}" r="${30 + i * 4}" fill="none" stroke="rgb(${i * 6},${220 - i * 3},90)" stroke-width="${3 + (i % 19)}"/>`,
  );
  const letter = `<path d="M${width * 0.4} ${height * 0.3}v${height * 0.4}h${width * 0.15}" fill="none" stroke="black" stroke-width="${width / 40}"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${rings.join("")}${letter}</svg>`;
  return sharp(grain, { raw: { width, height, channels: 3 } })
    .composite([{ input: Buffer.from(svg) }])
    .jpeg({ quality: 92 })
    .toBuffer();
}

/** The same region of the photograph at its full resolution, nothing reduced and nothing left away. */
async function unreduced(photograph: Buffer, { square, turn }: Patch): Promise<Patch> {
  const { data, info } = await sharp(photograph).raw().toBuffer({ resolveWithObject: true });
  const values = Float32Array.from(
    { length: info.width * info.height },
    (_, i) =>
      (0.299 * (data[3 * i] ?? 0) + 0.587 * (data[3 * i + 1] ?? 0) + 0.114 * (data[3 * i + 2] ?? 0)) / 255,
  );
  const grey = { values, width: info.width, height: info.height };
  return { grey, scaleX: 1, scaleY: 1, left: 0, top: 0, square, turn };
}

describe("a photograph finer than the network sees", async () => {
  const photograph = await scene(3200, 2400);
  const regions: Region[] = [
    { x: 0, y: 0, width: 3200, height: 2400, turn: 0 },
    { x: 400, y: 300, width: 2000, height: 1700, turn: 33 },
    { x: 1403, y: 900, width: 700, height: 650, turn: 0 },
    { x: 2803, y: 0, width: 397, height: 350, turn: 100 },
  ];

  it.each(regions)("is reduced while decoding with no visible difference: %j", async (region) => {
    const patch = await decode(photograph, region);
    const whole = await unreduced(photograph, patch);
    expect(patch.grey.values.length).toBeLessThan(700 * 700);
    expect(meanDifference(prepare(patch), prepare(whole))).toBeLessThan(0.03);
    expect(meanDifference(prepare(patch, 40), prepare(whole, 40))).toBeLessThan(0.03);
  });
});

describe("the direction of a turn", async () => {
  const photograph = await scene(200, 200);
  const png = async (degrees: number) => sharp(photograph).rotate(degrees).png().toBuffer();

  // sharp's rotate turns clockwise: https://sharp.pixelplumbing.com/api-operation#rotate
  it.each([90, 180, 270])("is clockwise: %i degrees", async (degrees) => {
    const turned = prepare(await decode(await png(degrees)));
    expect(meanDifference(prepare(await decode(await png(0)), degrees), turned)).toBeLessThan(0.01);
    const byRegion = await decode(await png(0), { x: 0, y: 0, width: 200, height: 200, turn: degrees });
    expect(meanDifference(prepare(byRegion), turned)).toBeLessThan(0.01);
  });

  it("is told from its opposite", async () => {
    const turned = prepare(await decode(await png(90)));
    expect(meanDifference(prepare(await decode(await png(0)), -90), turned)).toBeGreaterThan(0.2);
  });

  it("is taken after the camera's own orientation", async () => {
    // EXIF orientation 6: to be shown turned by 90 degrees clockwise (CIPA DC-008, tag 0x0112).
    const sideways = await sharp(photograph).withMetadata({ orientation: 6 }).png().toBuffer();
    expect(meanDifference(prepare(await decode(sideways)), prepare(await decode(await png(90))))).toBe(0);
  });
});

describe("what cannot be prepared", () => {
  it("refuses a region whose centre is outside, with the region and the size", async () => {
    const path = join(FOLDER, "grey.png");
    await expect(decode(path, { x: 300, y: 0, width: 20, height: 20, turn: 0 })).rejects.toThrow(
      /region: must be a box with its centre inside the photograph \(200 x 200\)\. Received .*"x":300/,
    );
    await expect(decode(path, { x: 0, y: 0, width: 0, height: 20, turn: 0 })).rejects.toThrow(
      /region: must be/,
    );
    await expect(decode(path, { x: 0, y: 0, width: 9, height: 9, turn: Number.NaN })).rejects.toThrow(
      /region/,
    );
  });

  it("refuses what is no picture", async () => {
    await expect(decode(Buffer.from("no picture"))).rejects.toThrow(/unsupported image format/);
  });

  it("leaves a picture without contrast at nothing", async () => {
    const flat = await sharp({ create: { width: 40, height: 40, channels: 3, background: "#888888" } })
      .png()
      .toBuffer();
    expect(Math.max(...prepare(await decode(flat)).map(Math.abs))).toBeLessThan(1e-3);
  });
});
