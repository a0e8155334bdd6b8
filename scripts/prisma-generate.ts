import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/**
 * Writes the database client from prisma/schema.prisma, when the schema or Prisma's version has changed since
 * the last time, with no download.
 *
 * Prisma looks for a native schema engine before every command and fetches it when it is missing, although
 * generating needs none: naming any file that can be executed keeps it from looking.
 */
const root = fileURLToPath(new URL("..", import.meta.url));
const generated = join(root, "app/_adapters/generated");
const stamp = join(generated, "made-from.txt");

const prisma = createRequire(import.meta.url).resolve("prisma/package.json");
const { version } = JSON.parse(readFileSync(prisma, "utf8")) as { version: string };
const schema = readFileSync(join(root, "prisma/schema.prisma"));
const madeFrom = `prisma ${version}, schema ${createHash("sha256").update(schema).digest("hex")}\n`;

if (readIfThere(stamp) !== madeFrom) {
  execFileSync(process.execPath, [join(prisma, "../build/index.js"), "generate"], {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: "1",
      CHECKPOINT_DISABLE: "1",
    },
  });
  writeFileSync(stamp, madeFrom);
}

function readIfThere(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}
