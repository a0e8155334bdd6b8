import { execFile } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { strToU8, zipSync } from "fflate";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { smallNetwork } from "../../setup/small-network.ts";

const root = join(import.meta.dirname, "..", "..", "..");
const folder = mkdtempSync(join(tmpdir(), "countermark-evaluate-"));
const at = (...parts: string[]) => join(folder, ...parts);
afterAll(() => rmSync(folder, { recursive: true }));

const evaluate = (options: string[], env: Record<string, string> = {}) =>
  new Promise<{ code: number; out: string; err: string }>((settle) => {
    const args = ["--import", "tsx", "ml/evaluate/main.ts", ...options];
    execFile(process.execPath, args, { cwd: root, env: { ...process.env, ...env } }, (error, out, err) =>
      settle({ code: error ? Number(error.code) : 0, out, err }),
    );
  });

const DESIGNS = {
  anchor: '<path d="M100 30v130M50 110c0 70 100 70 100 0M70 60h60" stroke-width="16"/>',
  crown: '<path d="M40 150V60l30 40 30-60 30 60 30-40v90z" stroke-width="8"/>',
  wheel:
    '<circle cx="100" cy="100" r="70" stroke-width="10"/><path d="M100 30v140M40 65l120 70" stroke-width="6"/>',
  key: '<circle cx="70" cy="60" r="28" stroke-width="12"/><path d="M85 82l60 80M130 142l22-16" stroke-width="14"/>',
};

async function draw(
  path: string,
  shapes: string,
  ink: string,
  ground: string,
  degrees: number,
): Promise<void> {
  mkdirSync(dirname(path), { recursive: true });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200" height="200"><rect width="200" height="200" fill="${ground}"/><g fill="none" stroke="${ink}">${shapes}</g></svg>`;
  await sharp(Buffer.from(svg)).rotate(degrees).png().toFile(path);
}

beforeAll(async () => {
  const { key, ...known } = DESIGNS;
  for (const [label, shapes] of Object.entries(known)) {
    await draw(at("references", label, "1.png"), shapes, "#222222", "#dddddd", 0);
    await draw(at("references", label, "2.png"), shapes, "#553311", "#eeddbb", 0);
    await draw(at("queries", label, "upright.png"), shapes, "#222222", "#d8d8d8", 0);
    await draw(at("queries", label, "turned.png"), shapes, "#333333", "#dddddd", 90);
  }
  await draw(at("absent", "key", "1.png"), key, "#222222", "#dddddd", 0);
  await draw(at("strangers", "anchor", "1.png"), key, "#222222", "#dddddd", 0);
  await draw(at("strangers", "unheard-of", "1.png"), key, "#222222", "#dddddd", 0);
  mkdirSync(at("damaged", "anchor"), { recursive: true });
  writeFileSync(at("damaged", "anchor", "broken.jpg"), "no picture");
  mkdirSync(at("empty"), { recursive: true });
});

const both = () => ["--references", at("references"), "--queries", at("queries")];

describe("evaluate, over a folder made for it", { timeout: 60_000 }, () => {
  it("sets a network from elsewhere beside the shipped pipeline", async () => {
    writeFileSync(at("elsewhere.onnx"), smallNetwork(3, 224, 14));
    const { out, err, code } = await evaluate([...both(), "--baseline-onnx", at("elsewhere.onnx")]);
    expect({ code, err }).toEqual({ code: 0, err: expect.not.stringContaining("--baseline-onnx") });
    // The same marks in the same directions: an average over squares finds these few.
    expect(out).toMatch(/^elsewhere\.onnx +6 +3 +6 +1\.000/m);
  });

  it("refuses a network from elsewhere that takes other pictures, or is none", async () => {
    writeFileSync(at("grey.onnx"), smallNetwork(1, 160, 16));
    const other = await evaluate([...both(), "--baseline-onnx", at("grey.onnx")]);
    expect(other.code).toBe(1);
    expect(other.err).toMatch(
      /--baseline-onnx: must take pictures of 1 x 3 x 224 x 224\. Received .*grey\.onnx/,
    );
    const none = await evaluate([...both(), "--baseline-onnx", at("damaged", "anchor", "broken.jpg")]);
    expect(none.err).toMatch(/--baseline-onnx: must be an ONNX file\. Received .*broken\.jpg/);
  });

  it("prints exactly the promised keys as JSON", async () => {
    const { code, out } = await evaluate([...both(), "--absent", at("absent"), "--json"]);
    expect(code).toBe(0);
    const figures: Record<string, number> = JSON.parse(out);
    expect(Object.keys(figures)).toEqual(
      "references classes queries recall1 recall5 recall10 map ece auroc medianMs".split(" "),
    );
    expect(figures).toMatchObject({ references: 6, classes: 3, queries: 6, recall1: 1, recall5: 1, map: 1 });
    expect(figures.auroc).toBe(1);
    expect(figures.ece).toBeGreaterThan(0);
    expect(figures.ece).toBeLessThan(1);
    expect(figures.medianMs).toBeGreaterThan(0);
  });

  it("asks all photographs of a class together", async () => {
    const { code, out } = await evaluate([...both(), "--absent", at("absent"), "--multi", "--json"]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ references: 6, classes: 3, queries: 3, recall1: 1, auroc: 1 });
  });

  it("gives no area under the ROC curve without absent marks", async () => {
    const { out } = await evaluate([...both(), "--json"]);
    expect(JSON.parse(out).auroc).toBeNull();
  });

  it("prints the baselines in the same table, and its progress elsewhere", async () => {
    const { out, err } = await evaluate([...both(), "--baselines", "--turns", "4"]);
    const lines = out.trimEnd().split("\n");
    expect(lines).toHaveLength(4);
    expect(lines[0]).toMatch(
      /references +classes +queries +recall@1 +@5 +@10 +mAP +ECE +ROC area +median ms/,
    );
    expect(lines[1]).toMatch(/^marks@\S+ +6 +3 +6 +1\.000 +1\.000 +1\.000 +1\.000 +\d\.\d{3} +- +\d+\.\d$/);
    expect(lines[2]).toMatch(/^oriented gradients +6 +3 +6 +1\.000/);
    expect(lines[3]).toMatch(/^perceptual hash +6 +3 +6 /);
    expect(err).toMatch(/queries 6 of 6/);
  });

  it("prints what re-ranking by alignment does, beside the pipeline without it", async () => {
    const { out } = await evaluate([...both(), "--verify", "--turns", "4"]);
    const lines = out.trimEnd().split("\n");
    expect(lines).toHaveLength(3);
    expect(lines[1]).toMatch(/^marks@\S+ +6 +3 +6 +1\.000/);
    expect(lines[2]).toMatch(/^the same, and aligned +6 +3 +6 +1\.000/);
  });

  it("gives no calibration error for a model that was not calibrated, or is another than the calibration's", async () => {
    mkdirSync(at("renamed"));
    const shipped = join(root, "ml", "model");
    for (const file of readdirSync(shipped)) copyFileSync(join(shipped, file), at("renamed", file));
    const facts = JSON.parse(readFileSync(join(shipped, "model.json"), "utf8"));
    writeFileSync(at("renamed", "model.json"), JSON.stringify({ ...facts, version: "99.0.0" }));
    const { out } = await evaluate([...both(), "--absent", at("absent"), "--json"], {
      COUNTERMARK_MODEL: at("renamed"),
    });
    expect(JSON.parse(out)).toMatchObject({ ece: null, auroc: 1, recall1: 1 });
    const { err, code } = await evaluate([...both(), "--reliability", at("none.json")], {
      COUNTERMARK_MODEL: at("renamed"),
    });
    expect(err).toMatch(/--reliability: the model must be calibrated/);
    expect(code).toBe(1);
  });

  it("writes how often what was given each probability was so", async () => {
    const path = at("reliability.json");
    const { out } = await evaluate([...both(), "--absent", at("absent"), "--json", "--reliability", path]);
    const written = JSON.parse(readFileSync(path, "utf8"));
    expect(written).toMatchObject({ ece: JSON.parse(out).ece, eceNone: expect.any(Number) });
    expect(written.reliability).toHaveLength(15);
    const counts: number[] = written.reliability.map((bin: { count: number }) => bin.count);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(7);
  });

  it("writes what probabilities are fitted on, a query a line, over references drawn for each", async () => {
    const path = at("features.jsonl");
    await evaluate([...both(), "--absent", at("absent"), "--features", path, "--sizes", "2,3", "--json"]);
    const [head, ...lines] = readFileSync(path, "utf8")
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(head).toEqual({ model: expect.stringMatching(/^marks@/), photographs: 6 });
    expect(lines).toHaveLength(14);
    for (const { entries, photographs, present, right, candidates } of lines) {
      expect(photographs).toBe(2 * entries);
      expect(candidates).toHaveLength(entries);
      expect(candidates[0]).toEqual([expect.any(Number), 2, expect.any(Number)]);
      expect(right).toBe(present ? 0 : null);
    }
    expect(lines.map(({ entries }) => entries).slice(0, 2)).toEqual([2, expect.any(Number)]);
  });

  it("compares no details when told so", async () => {
    const path = at("unpaired.jsonl");
    const { out, code } = await evaluate([...both(), "--no-rerank", "--features", path, "--json"]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ recall1: 1, queries: 6 });
    const [, first] = readFileSync(path, "utf8").split("\n");
    const { candidates } = JSON.parse(first ?? "");
    expect(candidates).toHaveLength(3);
    for (const candidate of candidates) expect(candidate).toEqual([expect.any(Number), 2, null]);
  });

  it("tells how often a mark stands above its near twin, and names a query without one", async () => {
    const twins = at("twins");
    for (const [pair, [a, b]] of Object.entries({ t1: ["anchor", "crown"], t2: ["wheel", "key"] } as const))
      for (const [variant, name] of Object.entries({ a, b }))
        for (const [folder, ink] of Object.entries({ references: "#222222", queries: "#444444" }))
          await draw(join(twins, folder, `${pair}${variant}`, "1.png"), DESIGNS[name], ink, "#dddddd", 0);
    const { out } = await evaluate(["--twins", twins, "--json"]);
    expect(JSON.parse(out)).toEqual({ queries: 4, accuracy: 1 });
    // Its own photograph is of the other: of four now three are right.
    await draw(join(twins, "queries", "t1a", "1.png"), DESIGNS.crown, "#444444", "#dddddd", 0);
    expect(JSON.parse((await evaluate(["--twins", twins, "--json"])).out)).toMatchObject({ accuracy: 0.75 });
    rmSync(join(twins, "references", "t2b"), { recursive: true });
    const { err, code } = await evaluate(["--twins", twins]);
    expect(err).toMatch(/--twins: each query needs a reference of its mark and of its twin\. Received .*t2a/);
    expect(code).toBe(1);
  });

  it("finds a turned mark only when it turns the query", async () => {
    const upright = JSON.parse((await evaluate([...both(), "--json", "--turns", "1"])).out);
    const { out } = await evaluate([...both(), "--json", "--turns", "4"]);
    expect(JSON.parse(out).map).toBeGreaterThanOrEqual(upright.map);
    expect(JSON.parse(out).recall1).toBe(1);
  });

  it("runs the one-shot test over an archive laid out as the published one", async () => {
    const png = async (shapes: string, ink: string) =>
      new Uint8Array(
        await sharp(
          Buffer.from(
            `<svg xmlns="http://www.w3.org/2000/svg" width="105" height="105" viewBox="0 0 200 200"><rect width="200" height="200" fill="white"/><g fill="none" stroke="${ink}">${shapes}</g></svg>`,
          ),
        )
          .png()
          .toBuffer(),
      );
    writeFileSync(
      at("runs.zip"),
      zipSync({
        "run01/class_labels.txt": strToU8(
          "run01/test/item01.png run01/training/class02.png\nrun01/test/item02.png run01/training/class02.png\n",
        ),
        "run01/test/item01.png": await png(DESIGNS.wheel, "#333333"),
        "run01/test/item02.png": await png(DESIGNS.wheel, "#000000"),
        "run01/training/class02.png": await png(DESIGNS.wheel, "#000000"),
        "run02/class_labels.txt": strToU8(
          "run02/test/item01.png run02/training/class01.png\nrun02/test/item02.png run02/training/class02.png\n",
        ),
        "run02/test/item01.png": await png(DESIGNS.anchor, "#333333"),
        // Labelled wrongly on purpose: the share that is right must come out at a half.
        "run02/test/item02.png": await png(DESIGNS.anchor, "#222222"),
        "run02/training/class01.png": await png(DESIGNS.anchor, "#000000"),
        "run02/training/class02.png": await png(DESIGNS.crown, "#000000"),
      }),
    );
    const { code, out, err } = await evaluate(["--glyphs", at("runs.zip"), "--json"]);
    expect(err).not.toMatch(/must/);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({ runs: 2, drawings: 4, accuracy: 0.75 });
  });

  it.each([
    [
      "a missing folder",
      ["--references", "/nowhere/at/all", "--queries", "."],
      /--references: must be a readable folder\. Received \/nowhere\/at\/all\./,
    ],
    [
      "an empty folder",
      ["--references", at("empty"), "--queries", at("queries")],
      /--references: must hold folders of photographs, <class>\/<image>/,
    ],
    [
      "a class without a reference",
      ["--references", at("references"), "--queries", at("strangers")],
      /--queries: every class must have a reference .* Received 1 without: unheard-of\./,
    ],
    [
      "an unreadable photograph",
      ["--references", at("references"), "--queries", at("damaged")],
      /damaged\/anchor\/broken\.jpg: must be a photograph that can be decoded\. Received: /,
    ],
    ["no folders", [], /--references and --queries: must both be given, or --glyphs\./],
    [
      "a turn count that is none",
      ["--turns", "many"],
      /--turns: must be a whole number from 1 to 360\. Received many\./,
    ],
    [
      "sizes that are none",
      ["--references", "x", "--queries", "x", "--sizes", "all"],
      /--sizes: must be whole numbers above 1, with commas\. Received all\./,
    ],
    ["an unknown option", ["--reference", "x"], /Unknown option '--reference'/],
  ])("names %s and fails", async (_, options, message) => {
    const { code, out, err } = await evaluate(options);
    expect(err).toMatch(message);
    expect(code).toBe(1);
    expect(out).toBe("");
  });

  it("refuses to run with a model folder that is not there", async () => {
    const { code, err } = await evaluate(both(), { COUNTERMARK_MODEL: at("empty") });
    expect(err).toMatch(/model\.json: must be a readable file \(COUNTERMARK_MODEL names the folder\)/);
    expect(code).toBe(1);
  });
});
