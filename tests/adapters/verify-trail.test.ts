import { execFile } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Database, openDatabase } from "#adapters/database";
import { castVote } from "#usecases/cast-vote";
import { makeThrowAwayDatabase } from "../../scripts/throw-away-database.ts";
import { reviewerNamed } from "../setup/review-members.ts";
import { drawMark, importFiles, wireScratch } from "../setup/scratch-reference.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const prismaFolder = join(root, "prisma");
const SLUGS = ["anchor", "bell", "crown"];

/** Where a database lies, and how it goes away. */
type Place = { readonly url: string | null; readonly data: string; drop(): Promise<void> };

const inFolder = async (): Promise<Place> => {
  const data = await mkdtemp(join(tmpdir(), "countermark-verify-"));
  return { url: null, data, drop: () => rm(data, { recursive: true, force: true }) };
};
const onServer = async (): Promise<Place> => {
  const [{ data, drop }, made] = [
    await inFolder(),
    await makeThrowAwayDatabase(process.env.TEST_DATABASE_URL ?? ""),
  ];
  return {
    url: made.url,
    data,
    async drop() {
      await made.drop();
      await drop();
    },
  };
};

describe("npm run verify-trail, embedded database", () => testVerifying(inFolder));
describe.skipIf(!process.env.TEST_DATABASE_URL)("npm run verify-trail, database server", () =>
  testVerifying(onServer),
);

function testVerifying(make: () => Promise<Place>): void {
  let place: Place;
  beforeAll(async () => {
    place = await make();
    await change(fill);
  }, 120_000);
  afterAll(() => place.drop());

  /** The command opens the database by itself, so nobody else may have the embedded one open. */
  async function change<T>(how: (database: Database) => Promise<T>): Promise<T> {
    const database = await openDatabase({ url: place.url, dataFolder: place.data, prismaFolder });
    try {
      return await how(database);
    } finally {
      await database.close();
    }
  }

  it("finds everything whole, and then the link of which a byte was altered", async () => {
    expect(await verify(place)).toEqual({
      exit: 0,
      said: "3 trails, 9 links\nEvery link is whole, and everything is what its trail says.\n",
    });

    const trail = await change(alter);
    const broken = { exit: 1, said: `3 trails, 9 links\n${trail}: first broken link 3: wrong hash\n` };
    expect(await verify(place)).toEqual(broken);
    expect(await verify(place, "--entry", "bell")).toEqual({
      ...broken,
      said: broken.said.replace("3 trails, 9 links", "1 trail, 3 links"),
    });
    console.log(broken.said);
  }, 120_000);
}

/** Three entries of two photographs each, and a vote on each. */
async function fill(database: Database): Promise<void> {
  const wired = await wireScratch(database);
  const files: Record<string, string | Uint8Array> = {
    "entries.csv": [
      "key,title,kind,field,description",
      ...SLUGS.map((slug) => `${slug},${slug} mark,mark,metalwork,Seen from above.`),
    ].join("\n"),
    "photographs.csv": [
      "file,entry,shows,region,turn,pixels_per_mm,licence,credit,impression",
      ...SLUGS.map((slug) => `p/${slug}.webp,${slug},,,0,,CC BY 4.0,Somebody,1`),
    ].join("\n"),
  };
  for (const [i, slug] of SLUGS.entries()) files[`p/${slug}.webp`] = await drawMark(900 + i);
  expect(await importFiles(wired, files)).toMatchObject({ ok: true });
  for (const slug of SLUGS) {
    const revision = (await wired.trails.history(slug))?.history.revisions[0]?.id ?? "";
    const said = { choice: "support", basis: "other", reason: "The strokes stand as on the plate." } as const;
    expect(await castVote(wired, reviewerNamed("Ansa Hollin"), slug, { revision, ...said })).toMatchObject({
      ok: true,
    });
  }
  await wired.end();
}

/** Replaces one letter of the reason of the vote on the bell, past the trigger that refuses it. @returns its trail */
async function alter({ prisma }: Database): Promise<string> {
  const { id } = await prisma.entry.findUniqueOrThrow({ where: { slug: "bell" } });
  const where = { trail_number: { trail: `entry:${id}`, number: 3 } };
  const { payload } = await prisma.trailLink.findUniqueOrThrow({ where });
  await prisma.$executeRaw`ALTER TABLE trail_links DISABLE TRIGGER trail_links_are_immutable`;
  const altered = payload.replace("The strokes", "The Strokes");
  expect(altered).not.toBe(payload);
  await prisma.trailLink.update({ where, data: { payload: altered } });
  await prisma.$executeRaw`ALTER TABLE trail_links ENABLE TRIGGER trail_links_are_immutable`;
  return `entry:${id}`;
}

/** Runs the command as an operator does. */
function verify(place: Place, ...words: readonly string[]): Promise<{ exit: number; said: string }> {
  const { DATABASE_URL: _, ...rest } = process.env;
  const env = { ...rest, COUNTERMARK_DATA: place.data, ...(place.url ? { DATABASE_URL: place.url } : {}) };
  const npm = ["run", "--silent", "verify-trail", "--", ...words];
  return new Promise((resolve) => {
    execFile("npm", npm, { cwd: root, env }, (error, stdout, stderr) => {
      resolve({ exit: typeof error?.code === "number" ? error.code : error ? -1 : 0, said: stdout + stderr });
    });
  });
}
