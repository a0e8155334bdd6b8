import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const makers = [
  "key,name,kind,place,active,follows,follows_how",
  "jonas-harl,Jonas Harl,person,Ostermoor,1781/1812,,",
  "harl-and-son,Harl & Son,firm,Ostermoor,1812/1843,jonas-harl,inheritance",
].join("\n");
const entries = (title: string) =>
  [
    "key,title,kind,maker,words,emblem,technique,material,period",
    `anchor-in-shield,${title},mark,harl-and-son,HARL & SON,anchor,stamped,pewter,1812/1843`,
    "three-bars,Three bars,mark,,,bars,impressed,stoneware,1790~/1800",
  ].join("\n");
const photographs = [
  "file,entry,shows,region,turn,pixels_per_mm,licence,credit",
  'p/1.webp,anchor-in-shield,A plate,"20,20,180,180",0,8,CC BY 4.0,Somebody',
  "p/2.webp,three-bars,A jug,,0,,CC BY 4.0,Somebody",
].join("\n");

describeOnBothDatabases("importing a folder", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  let files: Record<string, string | Uint8Array>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    files = {
      "makers.csv": makers,
      "entries.csv": entries("Anchor in a shield"),
      "photographs.csv": photographs,
      "p/1.webp": await drawMark(1),
      "p/2.webp": await drawMark(2),
    };
  });
  afterAll(() => wired.end());

  const images = async () => {
    const folder = join(wired.environment.dataFolder, "images");
    const names = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
    return names.filter((e) => e.isFile()).length;
  };

  it("records nothing when one column is wrong, and names file, line, column, rule and value", async () => {
    const wrong = String(files["photographs.csv"]).replace("20,20,180,180", "20,20,400,180");
    const result = await importFiles(wired, { ...files, "photographs.csv": wrong });
    expect(result).toMatchObject({
      ok: false,
      error: [
        { file: "photographs.csv", line: 2, field: "region", rule: "region-inside", params: { width: 240 } },
      ],
    });
    expect(await wired.entries.counts()).toEqual({ entries: 0, photographs: 0, makers: 0 });
    expect(await images()).toBe(0);
  });

  it("records nothing in a dry run", async () => {
    const result = await importFiles(wired, files, true);
    expect(result).toMatchObject({
      ok: true,
      value: { dryRun: true, found: { makers: 2, entries: 2, photographs: 2 } },
    });
    expect(await wired.entries.counts()).toMatchObject({ entries: 0, makers: 0 });
    expect(await images()).toBe(0);
  });

  it("names keys that nobody knows", async () => {
    const stranger = String(files["entries.csv"]).replace("harl-and-son", "harl-and-daughter");
    expect(await importFiles(wired, { ...files, "entries.csv": stranger })).toMatchObject({
      error: [
        {
          file: "entries.csv",
          line: 2,
          field: "maker",
          rule: "maker-unknown",
          received: "harl-and-daughter",
        },
      ],
    });
  });

  it("records everything, under review and with nobody's vote", async () => {
    const result = await importFiles(wired, files);
    expect(result).toMatchObject({
      ok: true,
      value: { recorded: { makers: 2, entries: 2, revisions: 2, photographs: 2 } },
    });
    const entry = await wired.entries.bySlug("anchor-in-shield");
    expect(entry).toMatchObject({
      summary: { state: "under review", maker: { slug: "harl-and-son" }, photographCount: 1 },
      revision: { number: 1, createdBy: "test", contentHash: expect.stringMatching(/^[0-9a-f]{64}$/) },
      photographs: [{ region: { x: 20, y: 20, width: 180, height: 180, turn: 0 }, pixelsPerMm: 8 }],
    });
    const maker = await wired.makers.bySlug("harl-and-son");
    expect(maker).toMatchObject({ predecessors: [{ how: "inheritance", maker: { slug: "jonas-harl" } }] });
  });

  it("changes nothing the second time", async () => {
    const result = await importFiles(wired, files);
    expect(result).toMatchObject({
      value: { recorded: { makers: 0, entries: 0, revisions: 0, photographs: 0 } },
    });
    expect(await wired.nearest.count(wired.embedders.inPlace.model)).toBe(2);
  });

  it("makes a new revision of what changed, with the old one as its parent", async () => {
    const before = await wired.entries.bySlug("anchor-in-shield");
    const result = await importFiles(wired, { "entries.csv": entries("Anchor in a plain shield") });
    expect(result).toMatchObject({ value: { recorded: { entries: 0, revisions: 1, photographs: 0 } } });
    const after = await wired.entries.bySlug("anchor-in-shield");
    expect(after).toMatchObject({
      summary: { title: "Anchor in a plain shield", photographCount: 1 },
      revision: { number: 2 },
    });
    const parents = await database().prisma.revisionParent.findMany({
      where: { revisionId: after?.revision.id ?? "" },
    });
    expect(parents.map((p) => p.parentId)).toEqual([before?.revision.id]);
  });

  it("takes over another region of a photograph as a new statement about it", async () => {
    const moved: typeof files = { ...files, "entries.csv": entries("Anchor in a plain shield") };
    moved["photographs.csv"] = photographs.replace("20,20,180,180", "10,10,200,200");
    expect(await importFiles(wired, moved)).toMatchObject({
      value: { recorded: { revisions: 1, photographs: 1 } },
    });
    const entry = await wired.entries.bySlug("anchor-in-shield");
    expect(entry?.photographs.map((p) => p.region.width)).toEqual([200]);
    expect(entry?.revision.number).toBe(3);
  });

  it("can't be made to change a revision afterwards", async () => {
    const { prisma } = database();
    await expect(prisma.revision.updateMany({ data: { title: "Forged" } })).rejects.toThrow(/append-only/);
    await expect(prisma.revision.deleteMany()).rejects.toThrow();
  });
});
