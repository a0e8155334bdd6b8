import { execFile } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { afterAll, describe, expect, it } from "vitest";

const root = join(import.meta.dirname, "..", "..", "..");
const folder = mkdtempSync(join(tmpdir(), "countermark-regions-"));
const at = (...parts: string[]) => join(folder, ...parts);
mkdirSync(at("scenes"));
afterAll(() => rmSync(folder, { recursive: true }));

const evaluate = (options: string[]) =>
  new Promise<{ code: number; out: string; err: string }>((settle) => {
    const args = ["--import", "tsx", "ml/evaluate/main.ts", ...options];
    execFile(process.execPath, args, { cwd: root }, (error, out, err) =>
      settle({ code: error ? Number(error.code) : 0, out, err }),
    );
  });

const WHEEL =
  '<circle cx="100" cy="100" r="70" stroke-width="10"/><path d="M100 30v140M40 65l120 70" stroke-width="6"/>';

async function draw(name: string, shapes: string): Promise<void> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200" height="200"><rect width="200" height="200" fill="#dddddd"/><g fill="none" stroke="#222222">${shapes}</g></svg>`;
  await sharp(Buffer.from(svg)).png().toFile(at("scenes", name));
}

describe("evaluate, of where the mark is", { timeout: 60_000 }, () => {
  it("measures where the mark is, beside a baseline, by the boxes that a folder names", async () => {
    await draw("wheel.png", WHEEL);
    await draw("nothing.png", "");
    const listed = [
      // The ring's outer edge: 100 less 70 and half of its stroke.
      { file: "wheel.png", boxes: [[25, 25, 150, 150]] },
      { file: "nothing.png", boxes: [] },
    ];
    writeFileSync(at("scenes", "regions.json"), JSON.stringify(listed));
    const { code, out } = await evaluate(["--regions", at("scenes"), "--json"]);
    expect(code).toBe(0);
    const figures: Record<string, number> = JSON.parse(out);
    expect(Object.keys(figures)).toEqual(
      "photographs marks meanIou above50 above75 above50OfThree auroc medianMs".split(" "),
    );
    expect(figures).toMatchObject({ photographs: 2, marks: 1, above50: 1 });
    expect(figures.meanIou).toBeGreaterThan(0.5);

    const both = (await evaluate(["--regions", at("scenes"), "--baselines"])).out.trimEnd().split("\n");
    expect(both[1]).toMatch(/^regions@\S+ +2 +1 +0\.\d{3} +1\.000 /);
    expect(both[2]).toMatch(/^largest blob of contrast +2 +1 +[01]\.\d{3} .* - +- +\d+\.\d$/);
  });

  it("names what is wrong with a list of boxes", async () => {
    mkdirSync(at("wrong"));
    mkdirSync(at("empty"));
    writeFileSync(at("wrong", "regions.json"), '[{ "file": "a.png", "boxes": [[1, 2, 0, 4]] }]');
    const { code, err } = await evaluate(["--regions", at("wrong")]);
    expect(code).toBe(1);
    expect(err).toMatch(
      /regions\.json: each photograph must be .* Received \{"file":"a\.png","boxes":\[\[1,2,0,4\]\]\}\./,
    );
    expect((await evaluate(["--regions", at("empty")])).err).toMatch(
      /--regions: must be a folder with regions\.json in it\. Received /,
    );
  });
});
