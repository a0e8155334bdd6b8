import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import { parseLegibleLetters } from "#core/reading/legible-letters";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { importFiles, wireScratch } from "../setup/scratch-reference.ts";

const migrations = fileURLToPath(new URL("../../prisma/migrations", import.meta.url));
const demo = fileURLToPath(new URL("../../seed/demo/entries.jsonl", import.meta.url));

/** Wordings that the two ways of writing plain letters could see differently. */
const WORDINGS: Readonly<Record<string, string>> = {
  bodkin: "T·BODKIN",
  sarrow: "BODKIN & SARROW / CARNHYTHE",
  voss: "DÖRTE VOß",
  gap: "G. MARL / [...]DENE",
  ellipsis: "HALLOW[…] CO… No. 12",
  northern: "ÆGIR Œ ØL ŁÓDŹ Đ ÞÓR",
  percent: "100%_PURE \\ WOOL",
  starred: "WHO? * ME [?] (2½)",
  greek: "ΘΕΟΔΩΡΟΣ θεός",
  combining: "E\u0301LAN — «ÉLAN»",
  none: "",
};

describeOnBothDatabases("entries by the letters that can be read", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  let ids: ReadonlyMap<string, string>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    const entries = Object.entries(WORDINGS).map(([key, words]) =>
      JSON.stringify({ key, title: key, kind: "mark", words, material: key === "voss" ? "pewter" : "" }),
    );
    const imported = await importFiles(wired, {
      "entries.jsonl": [...entries, await readFile(demo, "utf8")].join("\n"),
      "makers.jsonl": await readFile(join(demo, "../makers.jsonl"), "utf8"),
    });
    expect(imported).toMatchObject({ ok: true });
    const rows = await database().prisma.entry.findMany({ select: { id: true, slug: true } });
    ids = new Map(rows.map(({ id, slug }) => [id, slug]));
  }, 120_000);
  afterAll(() => wired.end());

  const find = async (typed: string, limit = 20) => {
    const letters = parseLegibleLetters(typed);
    if (!letters.ok || !letters.value) throw new Error(`${typed} can't be read.`);
    return (await wired.readings.find(letters.value, limit)).map((id) => ids.get(id));
  };

  it.each([
    ["dorte voss", ["voss"]],
    ["HALLOW*12", ["ellipsis"]],
    ["łódź", ["northern"]],
    ["THEODOROS", []],
    ["ΘΕΟΔΩΡΟΣ", ["greek"]],
    ["100 pure wool", ["percent"]],
    ["SHARD KELL", ["shard-kell-card"]],
    ["S?K", ["shard-kell-punches"]],
  ])("“%s” finds %j first", async (typed, first) => {
    expect((await find(typed)).slice(0, first.length)).toEqual(first);
  });

  it("puts a whole wording before a part of one, and letters that are not on a mark find it not", async () => {
    const found = await find("?BODKIN");
    expect(new Set(found.slice(0, 3))).toEqual(
      new Set(["bodkin", "bodkin-anvil-shield", "anvil-reproduction"]),
    );
    expect(found).not.toContain("voss-key");
    expect(await find("VOSS")).not.toContain("bodkin");
  });

  it("takes the nearest by trigrams when none agrees exactly", async () => {
    expect(await find("MERRIGALD")).toContain("merrigold-flower");
    expect(await find("BRANDRETN")).toContain("brandreth-sons-anchor");
  });

  it("looks for a single letter only as a whole wording", async () => {
    expect(new Set(await find("K"))).toEqual(new Set(["guild-hall-year-letter"]));
  });

  it("takes the signs of a pattern at their face value", async () => {
    const rows = async (pattern: string) =>
      wired.readings.find({ typed: pattern, pattern, legible: pattern.length }, 20);
    for (const pattern of ["%", "%%", "__", "\\", "\\%"]) expect(await rows(pattern), pattern).toEqual([]);
  });

  it("refuses to look for none or for too many", async () => {
    await expect(find("VOSS", 0)).rejects.toThrow("limit must be 1 to 200. Received 0.");
    await expect(find("VOSS", 201)).rejects.toThrow("Received 201.");
  });

  it("reads what entries record, and the materials they name", async () => {
    const id = [...ids].find(([, slug]) => slug === "shard-kell-punches")?.[0] ?? "";
    expect((await wired.readings.facts([id])).get(id)).toEqual({
      words: "S&K",
      sizeMm: { width: 18, height: 4.3 },
      technique: "stamped",
      material: "silver",
      kind: "mark",
    });
    const materials = await wired.readings.materials();
    expect(materials).toContain("pewter");
    expect(materials).not.toContain("");
    expect(new Set(materials).size).toBe(materials.length);
  });

  it("writes the letters of what was there before the column as it writes those of new entries", async () => {
    const { prisma } = database();
    const rows = () =>
      prisma.$queryRaw<{ slug: string; letters: string }[]>`
        SELECT slug, letters FROM retrieval.entry_words JOIN entries ON entries.id = entry_id ORDER BY slug`;
    const written = await rows();
    expect(written.filter(({ letters }) => letters !== "").length).toBeGreaterThan(150);
    const name = (await readdir(migrations)).find((each) => each.endsWith("_what_was_known")) ?? "";
    const sql = await readFile(join(migrations, name, "migration.sql"), "utf8");
    const fill = /UPDATE retrieval\.entry_words[\s\S]*?;\n/.exec(sql)?.[0] ?? "";
    await prisma.$executeRawUnsafe("UPDATE retrieval.entry_words SET letters = 'not yet'");
    await prisma.$executeRawUnsafe(fill);
    expect(await rows()).toEqual(written);
  });

  it("brings answers that were kept before into the form of now, in their order", async () => {
    const { prisma } = database();
    const hit = (entry: string) => ({ entry, photographId: `${entry}-1`, similarity: 0.9, turn: 30 });
    const old = [
      { hit: hit("b"), photographsNear: 2 },
      { hit: hit("a"), photographsNear: 1 },
    ];
    const plain = { ownerHash: "", model: "", noneFits: false, searched: 0, timings: {} };
    const photograph = {
      position: 1,
      mark: 1,
      sha256: "",
      width: 1,
      height: 1,
      ...{ regionX: 0, regionY: 0, regionWidth: 1, regionHeight: 1, regionTurn: 0 },
    };
    const photographs = { create: [photograph] };
    await prisma.lookUp.create({ data: { ...plain, photographs, id: "old", matches: old } });
    await prisma.lookUp.create({ data: { ...plain, photographs, id: "old-none", matches: [] } });
    const name = (await readdir(migrations)).find((each) => each.endsWith("_what_was_known")) ?? "";
    const sql = await readFile(join(migrations, name, "migration.sql"), "utf8");
    await prisma.$executeRawUnsafe(/UPDATE "look_ups"[\s\S]*?;\n/.exec(sql)?.[0] ?? "");
    const said = { foundBy: "photograph", findings: [], probability: null };
    expect((await wired.lookUps.find("old"))?.matches).toEqual([
      { hit: hit("b"), photographsNear: 2, entry: "b", ...said },
      { hit: hit("a"), photographsNear: 1, entry: "a", ...said },
    ]);
    expect((await wired.lookUps.find("old-none"))?.matches).toEqual([]);
  });
});
