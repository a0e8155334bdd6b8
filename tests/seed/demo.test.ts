import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import sharp from "sharp";
import { beforeAll, describe, expect, test } from "vitest";
import { checkDemo, type Demo } from "../../seed/check.ts";
import { isDrawnHere } from "../../seed/designs/emblems.ts";
import { buildScenario } from "../../seed/scenario/build.ts";
import type { EntryRow, MakerRow, PhotographRow, TryRow } from "../../seed/scenario/demo.ts";
import { readChapter } from "../../seed/scenario/read.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const demoFolder = join(root, "seed/demo");
const scenarioFolder = join(root, "seed/scenario");

function readLines<T>(name: string): T[] {
  const lines = readFileSync(join(demoFolder, name), "utf8").trim().split("\n");
  return lines.map((line) => JSON.parse(line) as T);
}

function readTable<T>(name: string): T[] {
  return parse(readFileSync(join(demoFolder, name), "utf8"), { columns: true }) as T[];
}

async function readDemo(): Promise<Demo> {
  const pictures = new Map<string, { width: number; height: number }>();
  for (const folder of ["photographs", "try"]) {
    for (const name of readdirSync(join(demoFolder, folder)).filter((file) => file.endsWith(".webp"))) {
      const { width, height } = await sharp(join(demoFolder, folder, name)).metadata();
      pictures.set(`${folder}/${name}`, { width, height });
    }
  }
  return {
    makers: readLines<MakerRow>("makers.jsonl"),
    entries: readLines<EntryRow>("entries.jsonl"),
    photographs: readTable<PhotographRow>("photographs.csv"),
    tries: readTable<TryRow>("try/try.csv"),
    pictures,
  };
}

describe("the demo", () => {
  let demo: Demo;
  beforeAll(async () => {
    demo = await readDemo();
  }, 60_000);

  test("contradicts itself nowhere", () => {
    expect(checkDemo(demo)).toEqual([]);
  });

  test("has the photograph of every mark that is asked after, and asks after every one", () => {
    const asked = JSON.parse(readFileSync(join(demoFolder, "questions/questions.json"), "utf8")) as {
      photograph: string;
    }[];
    const drawn = buildScenario(scenarioFolder).questions.map(({ key }) => `questions/${key}.webp`);
    const listed = readTable<PhotographRow>("questions/photographs.csv").map(({ file }) => file);
    const there = readdirSync(join(demoFolder, "questions")).filter((file) => file.endsWith(".webp"));
    expect(listed).toEqual(drawn);
    expect(asked.map(({ photograph }) => photograph).sort()).toEqual([...drawn].sort());
    expect(there.map((file) => `questions/${file}`).sort()).toEqual([...drawn].sort());
  });

  test("has the size that was asked for", () => {
    expect(demo.makers.length).toBeGreaterThanOrEqual(60);
    expect(demo.entries.length).toBeGreaterThanOrEqual(220);
    expect(demo.photographs.length).toBeGreaterThanOrEqual(900);
    expect(demo.tries).toHaveLength(30);
    expect(demo.tries.filter((row) => row.entry === "")).toHaveLength(10);
  });

  test("is what its chapters say, words and emblems as they are drawn", () => {
    const scenario = buildScenario(scenarioFolder);
    expect(demo.entries).toEqual(scenario.entries);
    expect(demo.makers).toEqual(scenario.makers);
  });

  test("keeps no picture that no table names", () => {
    const named = new Set([
      ...demo.photographs.map((row) => row.file),
      ...demo.tries.map((row) => `try/${row.file}`),
    ]);
    expect([...demo.pictures.keys()].filter((file) => !named.has(file))).toEqual([]);
  });

  test("finds a period outside its maker's years, a lost file and a wrong region", () => {
    const [entry] = demo.entries.filter((row) => row.maker !== "" && row.maker_part === "made");
    const [photograph, lost] = demo.photographs;
    if (!entry || !photograph || !lost) throw new Error("The demo must have entries and photographs.");
    const spoilt = checkDemo({
      ...demo,
      entries: demo.entries.map((row) => (row === entry ? { ...row, period: "1650/1660" } : row)),
      photographs: demo.photographs.map((row) => {
        if (row === photograph) return { ...row, region: "400,10,300,20" };
        return row === lost ? { ...row, file: "photographs/lost.webp" } : row;
      }),
    });
    expect(spoilt).toEqual(
      expect.arrayContaining([
        expect.stringContaining(`entry ${entry.key}: period must lie within`),
        expect.stringContaining(`photograph ${photograph.file}: region must lie within`),
        "photograph photographs/lost.webp: the file must be there.",
      ]),
    );
  });
});

describe("the designs", () => {
  const reserved = JSON.parse(readFileSync(join(root, "ml/train/designs/reserved.json"), "utf8")) as {
    emblems: { "game-icons": string[] };
    fonts: string[];
  };

  test("use only emblems kept out of training, or drawn here", () => {
    const used = new Set<string>();
    for (const name of readdirSync(scenarioFolder).filter(
      (file) => file.endsWith(".txt") && file !== "sources.txt",
    )) {
      for (const record of readChapter(readFileSync(join(scenarioFolder, name), "utf8"), name)) {
        const design = record.fields.get("design") ?? "";
        for (const [, emblem = ""] of design.matchAll(/@([a-z0-9-]+)/g)) used.add(emblem);
      }
    }
    expect(used.size).toBeGreaterThan(60);
    const foreign = [...used].filter(
      (name) => !isDrawnHere(name) && !reserved.emblems["game-icons"].includes(name),
    );
    expect(foreign).toEqual([]);
  });

  test("use only typefaces kept out of training", () => {
    const source = readFileSync(join(root, "seed/designs/typeface.ts"), "utf8");
    const families = [...source.matchAll(/"([a-z-]+)\/files\//g)].map(([, family = ""]) => family);
    expect(families.length).toBeGreaterThan(10);
    expect(families.filter((family) => !reserved.fonts.includes(family))).toEqual([]);
  });
});
