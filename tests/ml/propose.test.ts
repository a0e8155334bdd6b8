import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { readNetwork, shippedFolder } from "#ml/model";
import { overlap, uprightBox } from "#ml/overlap";
import { decode } from "#ml/preprocess";
import { proposeRegions, regionsFacts } from "#ml/propose";
import { prepareWhole } from "#ml/whole";
import { meanDifference } from "./vectors.ts";

// The arrays and boxes were written by ml/train/letterbox.py, in Python with Pillow and PyTorch.
const FOLDER = join(import.meta.dirname, "..", "fixtures", "regions");
const DEMO = join(import.meta.dirname, "..", "..", "seed", "demo");

type Fixture = { name: string; photograph: string; picture: string; box: number[] };

const { fixtures, unit, side } = JSON.parse(readFileSync(join(FOLDER, "fixtures.json"), "utf8")) as {
  fixtures: Fixture[];
  unit: number;
  side: number;
};

const trainers = ({ picture }: Fixture): Float32Array => {
  const bytes = readFileSync(join(FOLDER, picture));
  return Float32Array.from({ length: bytes.length / 2 }, (_, i) => bytes.readInt16LE(2 * i) / unit);
};

describe("a whole photograph, against the trainer's arrays", () => {
  it("has fixtures to compare with", () => expect(fixtures.length).toBeGreaterThanOrEqual(3));

  it.each(fixtures)("sees $name as the trainer does", async (fixture) => {
    const ours = prepareWhole(await decode(join(FOLDER, fixture.photograph)), side);
    expect(meanDifference(ours, trainers(fixture))).toBeLessThan(0.03);
  });

  it.each(fixtures)("finds in $name the box that the trainer finds", async (fixture) => {
    const [first] = await proposeRegions(join(FOLDER, fixture.photograph));
    const [x = 0, y = 0, width = 0, height = 0] = fixture.box;
    expect(first && overlap(first.region, { x, y, width, height })).toBeGreaterThan(0.95);
  });

  it("leaves what is beside a wide photograph at nothing", async () => {
    const wide = fixtures.find(({ name }) => name === "wide");
    const picture = prepareWhole(await decode(join(FOLDER, wide?.photograph ?? "")), side);
    expect(picture.slice(0, 20 * side).every((value) => value === 0)).toBe(true);
    expect(picture.slice(90 * side, 91 * side).some((value) => value !== 0)).toBe(true);
  });
});

describe("the shipped network that finds marks", () => {
  it("is the file that its facts describe, and 1.5 MB or less", async () => {
    const facts = await regionsFacts();
    expect(facts.id).toMatch(/^regions@\d+\.\d+\.\d+$/);
    expect((await readNetwork(facts, shippedFolder())).byteLength).toBeLessThanOrEqual(1_500_000);
  });

  it("finds the marks of the demo's photographs, which it was not trained on", async () => {
    const rows: Readonly<Record<"file" | "region" | "turn", string>>[] = parse(
      readFileSync(join(DEMO, "photographs.csv"), "utf8"),
      { columns: true, bom: true },
    );
    const overlaps: number[] = [];
    for (const { file, region, turn } of rows.filter((_, i) => i % 25 === 0)) {
      const [x = 0, y = 0, width = 0, height = 0] = region.split(",").map(Number);
      const [first] = await proposeRegions(join(DEMO, file));
      overlaps.push(first ? overlap(first.region, uprightBox({ x, y, width, height }, Number(turn))) : 0);
    }
    expect(overlaps.length).toBeGreaterThan(30);
    expect(overlaps.reduce((a, b) => a + b, 0) / overlaps.length).toBeGreaterThan(0.55);
  });

  it("finds it where the camera's orientation puts it", async () => {
    const photograph = join(FOLDER, fixtures[0]?.photograph ?? "");
    const upright = await sharp(photograph).rotate(90).png().toBuffer();
    // EXIF orientation 6: to be shown turned by 90 degrees clockwise (CIPA DC-008, tag 0x0112).
    const sideways = await sharp(photograph).withMetadata({ orientation: 6 }).png().toBuffer();
    const [[a], [b]] = await Promise.all([proposeRegions(upright), proposeRegions(sideways)]);
    expect(a && b && overlap(a.region, b.region)).toBeGreaterThan(0.99);
  });

  it("refuses what is no picture", async () => {
    await expect(proposeRegions(Buffer.from("no picture"))).rejects.toThrow(/unsupported image format/);
  });
});
