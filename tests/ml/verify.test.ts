import { existsSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { measurePlanar } from "#ml/evaluate/planar";
import { type Homography, through } from "#ml/homography";
import { freeing, type OpenCv, openCv } from "#ml/opencv";
import { alignPhotographs } from "#ml/verify";

const SIZE = 480;
/** Punched shapes and letters: a mark with corners to hold on to. */
const MARK = `
  <circle cx="240" cy="240" r="190" fill="none" stroke="#222" stroke-width="14"/>
  <path d="M150 330l40-150 50 90 50-90 40 150z" fill="#333"/><rect x="215" y="90" width="50" height="50"/>
  <path d="M120 200l30 10-20 30zM330 190l40-20-5 45z" fill="#111"/>
  <path d="M170 370h20v25h-20zM205 372l15 22h-30zM240 372h8v22h-8zM268 370l20 5-6 22-18-4z" fill="#222"/>`;
const OTHER = `
  <rect x="70" y="120" width="340" height="240" fill="none" stroke="#222" stroke-width="14"/>
  <path d="M120 180h60v30h-20v90h-20v-90h-20zM220 180h70l-20 120h-30zM320 180h40v120h-12v-50h-16v50h-12z" fill="#333"/>`;
/** None of these shapes is its own mirror image. */
const LETTERS = `<path fill="#222" d="M90 90h90v24h-62v30h48v24h-48v52h-28zM220 90h28v106h60v24h-88z
  M340 90h70l-44 106h50v24h-86l44-106h-34zM90 270l70 20-30 90-60-14zM210 270h24l40 70v-40h22l-10 90h-24l-30-60v60h-22z
  M340 270h64l-10 30h-30v20h24v24h-24v50h-24z"/>`;

const photograph = (shapes: string, transform = "", ground = "#ddd") =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE}" height="${SIZE}">` +
        `<rect width="${SIZE}" height="${SIZE}" fill="${ground}"/><g transform="${transform}">${shapes}</g></svg>`,
    ),
  )
    .png()
    .toBuffer();

const whole = (bytes: Buffer) => ({ photograph: bytes, region: null });

describe("two photographs of one mark, the truth known", { timeout: 60_000 }, () => {
  let reference: Buffer;
  beforeAll(async () => {
    reference = await photograph(MARK);
  });

  it.each([
    ["turned by 35 degrees", 35, 1],
    ["turned by 170 degrees and smaller", 170, 0.7],
  ])("are laid over one another within a pixel and a half: %s", async (_, degrees, scale) => {
    const turned = `translate(240 240) rotate(${degrees}) scale(${scale}) translate(-240 -240)`;
    const found = await alignPhotographs(whole(await photograph(MARK, turned, "#cec4b4")), whole(reference));
    expect(found.plausible).toBe(true);
    expect(found.points).toHaveLength(found.inliers);
    const angle = (-degrees * Math.PI) / 180;
    const truth = (x: number, y: number) => {
      const [u, v] = [(x - 240) / scale, (y - 240) / scale];
      return [
        240 + u * Math.cos(angle) - v * Math.sin(angle),
        240 + u * Math.sin(angle) + v * Math.cos(angle),
      ] as const;
    };
    expect(errorAt(found.homography, truth)).toBeLessThan(1.5);
    for (const { query, reference: point } of found.points) {
      const [x, y] = truth(...query);
      expect(Math.hypot(x - point[0], y - point[1])).toBeLessThan(4);
    }
  });

  it("are laid over one another by their regions, in pixels of the whole photograph", async () => {
    const moved = await sharp(await photograph(MARK, "", "#ddd"))
      .extend({ left: 300, top: 120, right: 80, bottom: 60, background: "#887" })
      .png()
      .toBuffer();
    const region = { x: 300, y: 120, width: SIZE, height: SIZE, turn: 0 };
    const found = await alignPhotographs({ photograph: moved, region }, whole(reference));
    expect(found.plausible).toBe(true);
    expect(errorAt(found.homography, (x, y) => [x - 300, y - 120], 300, 120)).toBeLessThan(1);
  });

  it("are not laid over one another as a mirror image", async () => {
    const letters = await photograph(LETTERS);
    const mirrored = await sharp(letters).flop().png().toBuffer();
    expect((await alignPhotographs(whole(letters), whole(letters))).plausible).toBe(true);
    expect((await alignPhotographs(whole(mirrored), whole(letters))).plausible).toBe(false);
  });
});

describe("what can't be aligned", { timeout: 60_000 }, () => {
  it("is another mark", async () => {
    const found = await alignPhotographs(whole(await photograph(OTHER)), whole(await photograph(MARK)));
    expect(found.plausible).toBe(false);
  });

  it("is a photograph without any detail", async () => {
    const found = await alignPhotographs(whole(await photograph("")), whole(await photograph(MARK)));
    expect(found).toEqual({ inliers: 0, points: [], homography: null, plausible: false });
  });

  it("is a region outside its photograph, which is refused with what was received", async () => {
    const region = { x: 900, y: 0, width: 50, height: 50, turn: 0 };
    const mark = await photograph(MARK);
    await expect(alignPhotographs({ photograph: mark, region }, whole(mark))).rejects.toThrow(
      /region: must lie inside the photograph \(480 x 480\)\. Received .*900/,
    );
  });
});

describe("the library", () => {
  it("leaves the process's own handling of failures alone", async () => {
    const listeners = () => [
      ...process.listeners("unhandledRejection"),
      ...process.listeners("uncaughtException"),
    ];
    await openCv();
    expect(listeners().filter((each) => /abort|ExitStatus/.test(String(each)))).toEqual([]);
  });

  it("gets everything back, in the other order, when work fails", async () => {
    const { cv } = await openCv();
    const freed: string[] = [];
    const thing = (name: string) => ({ delete: () => void freed.push(name) });
    const fail = () =>
      freeing(cv as OpenCv, (keep) => {
        keep(thing("first"));
        keep(thing("second"));
        throw new Error("no more");
      });
    expect(fail).toThrow("no more");
    expect(freed).toEqual(["second", "first"]);
  });
});

// OpenCV's samples (Apache-2.0): graf1 and graf3 are Mikolajczyk and Schmid's, with their true homography.
const PLANAR = join(import.meta.dirname, "..", "..", "..", "shared", "images", "planar");
const missing = !existsSync(PLANAR);
if (missing) console.log("Skipped: alignment of graf1 with graf3, because ../shared/images is missing.");

describe.skipIf(missing)("photographs from elsewhere", { timeout: 60_000 }, () => {
  it("are aligned to the pixel, and a box is found in its scene", async () => {
    const figures = await measurePlanar(PLANAR);
    expect(figures.meanCornerError).toBeLessThan(1);
    expect(figures.boxFound).toBe(true);
  });
});

/** The mean distance from the truth at the corners of the mark. */
function errorAt(
  h: Homography | null,
  truth: (x: number, y: number) => readonly [number, number],
  left = 0,
  top = 0,
): number {
  if (!h) return Number.POSITIVE_INFINITY;
  const corners = [50, 430].flatMap((x) => [50, 430].map((y) => [x + left, y + top] as const));
  const distances = corners.map(([x, y]) => {
    const [a, b] = through(h, x, y);
    const [c, d] = truth(x, y);
    return Math.hypot(a - c, b - d);
  });
  return distances.reduce((sum, each) => sum + each, 0) / distances.length;
}
