import { rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, constants, gunzipSync } from "node:zlib";
import { openDatabase } from "#adapters/database";

/**
 * Writes prisma/empty-database.tar.br: an embedded database with every migration applied and nothing in it.
 * A new data folder is unpacked from it instead of being made from nothing. Needed again after a new migration;
 * a test says so. Brotli packs the 41 MB into a third of what gzip needs, because its window reaches back to the
 * same tables in the template databases; unpacking takes a tenth of a second.
 */
const prismaFolder = fileURLToPath(new URL("../prisma", import.meta.url));
const target = join(prismaFolder, "empty-database.tar.br");

// From nothing: an older dump would leave its traces.
await rm(target, { force: true });
const database = await openDatabase({ url: null, dataFolder: null, prismaFolder });
try {
  const archive = gunzipSync(await (await database.dump()).arrayBuffer());
  const packed = brotliCompressSync(archive, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
      [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
      [constants.BROTLI_PARAM_SIZE_HINT]: archive.byteLength,
    },
  });
  await writeFile(target, packed);
  console.log(
    `${target}: ${(packed.byteLength / 1e6).toFixed(1)} MB, unpacked ${(archive.byteLength / 1e6).toFixed(0)} MB`,
  );
} finally {
  await database.close();
}
