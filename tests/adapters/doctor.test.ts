import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createBlobs } from "#adapters/blobs";
import { openDatabase } from "#adapters/database";
import { createLookUps } from "#adapters/look-ups-store";
import { NOTHING_KNOWN } from "#core/look-ups/knowledge";
import { readEnvironment } from "#web/environment";
import { checkDatabase } from "../../scripts/doctor/database.ts";

const prismaFolder = fileURLToPath(new URL("../../prisma", import.meta.url));
let folder = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "countermark-test-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

it("the doctor finds an image that is missing, and one that is not what it was", async () => {
  const settings = { ...readEnvironment({ NODE_ENV: "test", COUNTERMARK_DATA: folder }), prismaFolder };
  const blobs = createBlobs(join(folder, "images"));
  const { sha256 } = await blobs.put(new TextEncoder().encode("an image"));
  const database = await openDatabase({ url: null, dataFolder: folder, prismaFolder });
  await createLookUps(database).save({
    id: "whole",
    ownerHash: "",
    photographs: [
      {
        sha256,
        width: 8,
        height: 8,
        region: { x: 0, y: 0, width: 8, height: 8, turn: 0 },
        mark: 1,
        framedBy: "person",
      },
    ],
    asked: NOTHING_KNOWN,
    model: "marks@0.0.0",
    noneFits: true,
    noneProbability: null,
    calibrated: null,
    searched: 0,
    matches: [],
    otherMarks: [],
    makers: [],
    timings: { decode: 0, preprocess: 0, embed: 0, search: 0 },
    createdAt: new Date(),
    expiresAt: null,
  });
  await database.close();

  const words = async () =>
    (await checkDatabase(settings)).map(({ what, ok, words }) => ({ what, ok, words }));
  expect(await words()).toMatchObject([
    { what: "database", ok: true },
    { what: "extensions", ok: true, words: expect.stringContaining("vector") },
    { what: "images", ok: true, words: expect.stringContaining("1 images") },
    { what: "models", ok: true, words: expect.stringContaining("none has answered yet") },
  ]);

  await writeFile(join(folder, "images", sha256.slice(0, 2), sha256), "another image");
  expect((await words())[2]).toMatchObject({
    ok: false,
    words: expect.stringContaining("1 are not what they were"),
  });

  await blobs.remove(sha256);
  expect((await words())[2]).toMatchObject({ ok: false, words: expect.stringContaining("1 are missing") });
});
