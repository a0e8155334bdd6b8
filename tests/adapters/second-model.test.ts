import { copyFile, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createEmbedders } from "#adapters/kept-models";
import { describeModels } from "#usecases/describe-models";
import { lookUpMark } from "#usecases/look-up-mark";
import { reembed } from "#usecases/reembed";
import { removeOldVectors } from "#usecases/remove-old-vectors";
import { settleModels } from "#usecases/settle-models";
import { showLookUp } from "#usecases/show-look-up";
import { type Live, wire } from "#web/live";
import { describeModelsInWords } from "../../scripts/doctor/models.ts";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";
import { writeSmallModel } from "../setup/small-network.ts";

const SHIPPED = join(import.meta.dirname, "..", "..", "ml", "model");
const DAY = 24 * 60 * 60 * 1000;
const PHOTOGRAPHS = 20;

/** The tests tell one story and stand in its order: each begins where the one before it ended. */
describeOnBothDatabases("bringing a new model in", (database) => {
  let scratch: Awaited<ReturnType<typeof wireScratch>>;
  let folder: string;
  const kept = () => join(scratch.environment.dataFolder, "models");

  /** A host as it starts anew, with the model of a folder in place. */
  async function startWith(place: string): Promise<Live> {
    const embedders = await createEmbedders(kept(), place);
    const { environment } = scratch;
    const wired = { environment, database: database(), ...wire(environment, database(), embedders) };
    await settleModels(wired);
    return wired;
  }

  async function importMarks(wired: Live, from: number, to: number) {
    const seeds = Array.from({ length: to - from }, (_, k) => from + k);
    const rows = seeds.map((k) => `p/${k}.webp,mark-${k},,,0,,CC BY 4.0,Somebody`);
    const photographs = seeds.map(async (k) => [`p/${k}.webp`, await drawMark(k)] as const);
    const result = await importFiles(wired, {
      "entries.csv": ["key,title,kind", ...seeds.map((k) => `mark-${k},Mark ${k},mark`)].join("\n"),
      "photographs.csv": ["file,entry,shows,region,turn,pixels_per_mm,licence,credit", ...rows].join("\n"),
      ...Object.fromEntries(await Promise.all(photographs)),
    });
    expect(result).toMatchObject({ ok: true, value: { recorded: { photographs: to - from } } });
  }

  const lookUp = async (wired: Live, seed: number) =>
    lookUpMark(wired, {
      photographs: [{ bytes: await drawMark(seed), region: null, mark: 1 }],
      ownerHash: "owner",
      days: 30,
    });

  async function answerOf(wired: Live, seed: number) {
    const answer = await lookUp(wired, seed);
    if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    const view = (await showLookUp(wired, answer.value.id))?.view;
    return { model: view?.model, searched: view?.searched, first: view?.matches[0]?.entry.slug };
  }

  const states = async () =>
    Object.fromEntries((await scratch.models.all()).map(({ model, state }) => [model, state]));
  const place = (name: string) => join(folder, name);

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "countermark-models-"));
    scratch = await wireScratch(database(), false);
    // The shipped network under another version gives the same vectors; the other two give quite others.
    await mkdir(place("shipped"));
    for (const file of await readdir(SHIPPED))
      await copyFile(join(SHIPPED, file), join(place("shipped"), file));
    const facts = JSON.parse(await readFile(join(SHIPPED, "model.json"), "utf8"));
    await writeFile(join(place("shipped"), "model.json"), JSON.stringify({ ...facts, version: "99.0.0" }));
    await writeSmallModel(place("small"), "1.0.0", 8);
    await writeSmallModel(place("fine"), "2.0.0", 16);
  });
  afterAll(async () => {
    await scratch.end();
    await rm(folder, { recursive: true, force: true });
  });

  it("the first model answers at once, and its files are kept", async () => {
    const wired = await startWith(place("small"));
    await importMarks(wired, 0, PHOTOGRAPHS);
    expect(await states()).toEqual({ "squares@1.0.0": "answering" });
    expect((await readdir(join(kept(), "squares@1.0.0"))).sort()).toEqual(["model.json", "squares.onnx"]);
    expect(await answerOf(wired, 3)).toEqual({
      model: "squares@1.0.0",
      searched: PHOTOGRAPHS,
      first: "mark-3",
    });
  });

  it("a calibration that breaks a rule is refused with its file, the field, the rule and the value", async () => {
    await writeSmallModel(place("careless"), "3.0.0", 8);
    const calibration = JSON.parse(await readFile(join(SHIPPED, "calibration.json"), "utf8"));
    await writeFile(
      join(place("careless"), "calibration.json"),
      JSON.stringify({ ...calibration, date: "soon" }),
    );
    await expect(createEmbedders(kept(), place("careless"))).rejects.toThrow(
      /calibration\.json: date must be a day as YYYY-MM-DD\. Received soon\./,
    );
  });

  it("the calibration of another model is not used", async () => {
    expect((await createEmbedders(kept(), place("shipped"))).inPlace).toMatchObject({
      model: "marks@99.0.0",
      calibration: null,
    });
    expect((await createEmbedders(kept(), SHIPPED)).inPlace.calibration).not.toBeNull();
  });

  it("another network under the same name and version is refused, with both sums", async () => {
    await writeSmallModel(place("forged"), "1.0.0", 10);
    await expect(startWith(place("forged"))).rejects.toThrow(
      /forged: a network must have a version of its own. Received squares@1.0.0 with SHA-256 [0-9a-f]{64}/,
    );
  });

  it("while the next is filled the old one answers; a stop loses little, and a restart goes on", async () => {
    const wired = await startWith(place("shipped"));
    expect(await states()).toEqual({ "marks@99.0.0": "filling", "squares@1.0.0": "answering" });
    const stop = new AbortController();
    let embedded = 0;
    const answers: unknown[] = [];
    const first = await reembed(wired, {
      signal: stop.signal,
      async pause() {
        if (embedded++ === 10) stop.abort();
        if (embedded % 5 === 0) answers.push(await answerOf(wired, embedded));
      },
    });
    expect(first).toMatchObject({
      stopped: true,
      switched: false,
      answers: false,
      done: 10,
      of: PHOTOGRAPHS,
    });
    expect(answers).toEqual([
      { model: "squares@1.0.0", searched: PHOTOGRAPHS, first: "mark-5" },
      { model: "squares@1.0.0", searched: PHOTOGRAPHS, first: "mark-10" },
    ]);
    expect(describeModelsInWords(await describeModels(wired))).toBe(
      "marks@99.0.0 filling, 10 of 20 photographs (50%); squares@1.0.0 answering, 20 of 20 photographs (100%)",
    );

    const again = await startWith(place("shipped"));
    let atFirst: unknown;
    let rest = 0;
    const second = await reembed(again, {
      onProgress: (progress) => {
        atFirst ??= progress;
      },
      pause: async () => void rest++,
    });
    expect(atFirst).toEqual({ model: "marks@99.0.0", done: 10, of: PHOTOGRAPHS });
    expect(rest).toBe(10);
    expect(second).toMatchObject({ switched: true, answers: true, done: PHOTOGRAPHS, failures: 0 });
    expect(await states()).toEqual({ "marks@99.0.0": "answering", "squares@1.0.0": "retired" });
    expect(await answerOf(again, 3)).toEqual({
      model: "marks@99.0.0",
      searched: PHOTOGRAPHS,
      first: "mark-3",
    });
    expect(await reembed(again)).toMatchObject({ switched: false, answers: true });
  }, 120_000);

  it("what is imported meanwhile gets vectors of both", async () => {
    const wired = await startWith(place("fine"));
    await importMarks(wired, PHOTOGRAPHS, PHOTOGRAPHS + 3);
    expect(await wired.models.coverage("marks@99.0.0")).toEqual({ done: 23, of: 23 });
    expect(await wired.models.coverage("squares@2.0.0")).toEqual({ done: 3, of: 23 });
    expect(await answerOf(wired, 21)).toMatchObject({ model: "marks@99.0.0", first: "mark-21" });
  });

  it("when the old one's files are gone, a look-up says that the reference is being prepared, and keeps nothing", async () => {
    await rm(join(kept(), "marks@99.0.0"), { recursive: true });
    const wired = await startWith(place("fine"));
    const before = await database().prisma.lookUp.count();
    expect(await lookUp(wired, 3)).toEqual({
      ok: false,
      error: { field: "request", rule: "preparing", received: "squares@2.0.0", params: { done: 3, of: 23 } },
    });
    expect(await database().prisma.lookUp.count()).toBe(before);
    const described = await describeModels(wired);
    expect(() => describeModelsInWords(described)).toThrow(/files of marks@99.0.0 are gone or damaged/);
  });

  it("a switch that fails half-way leaves everything as it was", async () => {
    const before = await scratch.models.all();
    await expect(
      scratch.models.switchOver(() => [
        { model: "marks@99.0.0", dimension: 256, state: "retired" },
        { model: "squares@2.0.0", dimension: 256, state: "answering" },
        { model: "not a model", dimension: 256, state: "retired" },
      ]),
    ).rejects.toThrow();
    expect(await scratch.models.all()).toEqual(before);
    await expect(
      scratch.models.change([{ model: "squares@2.0.0", dimension: 256, state: "answering" }]),
    ).rejects.toThrow();
    expect(await scratch.models.all()).toEqual(before);
  });

  it("a photograph whose image is gone holds the switch up, until the operator goes without it", async () => {
    const wired = await startWith(place("fine"));
    const entry = await wired.entries.bySlug("mark-7");
    await wired.blobs.remove(entry?.photographs[0]?.sha256 ?? "");
    expect(await reembed(wired)).toMatchObject({
      answers: false,
      failures: 1,
      failed: [{ sha256: entry?.photographs[0]?.sha256, why: "its image is missing" }],
      done: 22,
      of: 23,
    });
    expect(await reembed(wired, { leaveOut: true })).toMatchObject({ switched: true, answers: true });
    expect(await answerOf(wired, 3)).toEqual({ model: "squares@2.0.0", searched: 22, first: "mark-3" });
  });

  it("an old answer keeps the words of the model that gave it", async () => {
    const wired = await startWith(place("fine"));
    const rows = await database().prisma.lookUp.findMany({ where: { model: "squares@1.0.0" } });
    const shown = await showLookUp(wired, rows[0]?.id ?? "");
    expect(shown?.view).toMatchObject({ model: "squares@1.0.0", noneFits: false });
    // No calibration was fitted for it, and the shipped one's says nothing about it.
    expect(shown?.view).toMatchObject({ noneProbability: null, calibrated: null });
    expect(shown?.view.matches[0]).toMatchObject({ probability: null, likeness: "very close" });
  });

  it("retired models' vectors, files and index go after their time", async () => {
    const wired = await startWith(place("fine"));
    expect(await removeOldVectors(wired, 7)).toEqual([]);
    const clock = { now: () => new Date(Date.now() + 8 * DAY) };
    expect(await removeOldVectors({ ...wired, clock }, 7)).toEqual(["marks@99.0.0", "squares@1.0.0"]);
    expect(await states()).toEqual({ "squares@2.0.0": "answering" });
    expect(await readdir(kept())).toEqual(["squares@2.0.0"]);
    const left = await database().prisma.$queryRaw<{ model: string }[]>`
      SELECT DISTINCT model FROM retrieval.photograph_vectors`;
    expect(left).toEqual([{ model: "squares@2.0.0" }]);
    const indexes = await database().prisma.$queryRaw<{ n: number }[]>`
      SELECT count(*)::int AS n FROM pg_indexes WHERE schemaname = 'retrieval' AND indexname LIKE 'nearest_%'`;
    expect(indexes).toEqual([{ n: 1 }]);
  });
});
