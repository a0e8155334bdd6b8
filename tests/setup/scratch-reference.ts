import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import sharp from "sharp";
import type { Database } from "#adapters/database";
import { openImportFolder } from "#adapters/import-folder";
import { importReferences } from "#usecases/import-references";
import { settleModels } from "#usecases/settle-models";
import { readEnvironment } from "#web/environment";
import { type Live, openEmbedders, wire } from "#web/live";

/**
 * The real wiring over a test's database, with a folder for images that is gone afterwards.
 * @param settled brings the shipped model in
 */
export async function wireScratch(
  database: Database,
  settled = true,
): Promise<Live & { readonly end: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), "countermark-test-"));
  const environment = {
    ...readEnvironment({ COUNTERMARK_DATA: folder, NODE_ENV: "test" }),
    databaseUrl: null,
  };
  const wired = wire(environment, database, await openEmbedders(environment));
  if (settled) await settleModels(wired);
  return { environment, database, ...wired, end: () => rm(folder, { recursive: true, force: true }) };
}

/** A photograph of a mark of simple shapes, drawn from a number: the same number, the same picture. */
export async function drawMark(seed: number, size = 240): Promise<Buffer> {
  const random = mulberry(seed);
  const background = Buffer.alloc(size * size * 3, 200 + Math.floor(random() * 40));
  const bars = await Promise.all(
    Array.from({ length: 6 }, async () => {
      const width = 10 + Math.floor(random() * 90);
      const height = 10 + Math.floor(random() * 90);
      const shade = Math.floor(random() * 120);
      return {
        input: {
          create: { width, height, channels: 3 as const, background: { r: shade, g: shade, b: shade } },
        },
        left: 20 + Math.floor(random() * 110),
        top: 20 + Math.floor(random() * 110),
      };
    }),
  );
  return sharp(background, { raw: { width: size, height: size, channels: 3 } })
    .composite(bars)
    .webp({ quality: 90 })
    .toBuffer();
}

function mulberry(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Writes files into a folder of their own, imports it and removes it. */
export async function importFiles(
  wired: Live,
  files: Readonly<Record<string, string | Uint8Array>>,
  dryRun = false,
) {
  const folder = await mkdtemp(join(tmpdir(), "countermark-import-"));
  try {
    for (const [name, content] of Object.entries(files)) {
      await mkdir(dirname(join(folder, name)), { recursive: true });
      await writeFile(join(folder, name), content);
    }
    return await importReferences(wired, await openImportFolder(folder), { dryRun, by: "test" });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
