import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { refusedImports } from "./read-imports.ts";

const root = fileURLToPath(new URL("../..", import.meta.url)).replace(/\/$/, "");

it("every import in the house is one that its room may make", async () => {
  const folders = ["app", "ml", "scripts", "seed"].filter((folder) => existsSync(join(root, folder)));
  expect(await refusedImports(root, folders)).toEqual([]);
}, 60_000);

describe("in a house with a fault in every room", () => {
  const house = mkdtempSync(join(tmpdir(), "house-"));
  const files: Readonly<Record<string, string>> = {
    "app/_core/reads-a-file.ts": 'import { readFileSync } from "node:fs";\nexport const a = readFileSync;\n',
    "app/_core/hashes.ts": 'import { createHash } from "node:crypto";\nexport const a = createHash;\n',
    "app/_core/parses-forms.ts": 'import { z } from "zod";\nexport const a = z;\n',
    "app/_core/loops.ts": 'import { b } from "./loops-back.ts";\nexport const a: number = b;\n',
    "app/_core/loops-back.ts": 'import { a } from "./loops.ts";\nexport const b: number = a;\n',
    "app/_core/dates/edtf-syntax.ts": 'import { parse } from "@edtf-ts/core";\nexport const a = parse;\n',
    "app/_usecases/stores.ts": 'import { db } from "#adapters/db";\nexport const a = db;\n',
    "app/_usecases/ports.ts": "export type Port = number;\nexport const notAType = 1;\n",
    "app/_adapters/db.ts": 'import { notAType } from "../_usecases/ports.ts";\nexport const db = notAType;\n',
    "app/_adapters/fits.ts":
      'import type { Port } from "../_usecases/ports.ts";\nexport const p: Port = 1;\n',
    "app/_web/wires.ts": 'import { db } from "#adapters/db";\nexport const a = db;\n',
    "app/_ui/asks.tsx": 'import { a } from "#web/wires";\nexport const b = a;\n',
    "app/(site)/page.tsx":
      'import { db } from "#adapters/db";\nexport default function Page() { return db; }\n',
    "app/api/route.ts": 'import pg from "pg";\nexport const GET = pg;\n',
    "ml/embed.ts": 'import { a } from "#core/loops";\nexport const b = a;\n',
    "scripts/writes.ts":
      'import pg from "pg";\nimport { gone } from "./gone.ts";\nexport const a = [pg, gone];\n',
  };
  let refused: readonly string[] = [];

  beforeAll(async () => {
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(house, path)), { recursive: true });
      writeFileSync(join(house, path), text);
    }
    for (const file of ["package.json", "tsconfig.json"]) cpSync(join(root, file), join(house, file));
    symlinkSync(join(root, "node_modules"), join(house, "node_modules"));
    refused = await refusedImports(house, ["app", "ml", "scripts"]);
  }, 60_000);
  afterAll(() => rmSync(house, { recursive: true }));

  it.each([
    ["app/_core/reads-a-file.ts", "fs"],
    ["app/_core/hashes.ts", "crypto"],
    ["app/_core/parses-forms.ts", "zod"],
    ["app/_usecases/stores.ts", "app/_adapters/db.ts"],
    ["app/_adapters/db.ts", "app/_usecases/ports.ts"],
    ["app/_web/wires.ts", "app/_adapters/db.ts"],
    ["app/_ui/asks.tsx", "app/_web/wires.ts"],
    ["app/(site)/page.tsx", "app/_adapters/db.ts"],
    ["app/api/route.ts", "/pg/"],
    ["ml/embed.ts", "app/_core/loops.ts"],
    ["scripts/writes.ts", "/pg/"],
    ["scripts/writes.ts", "gone"],
  ])("%s is refused %s", (from, to) => {
    expect(refused.filter((line) => line.includes(`: ${from} -> `) && line.includes(to))).not.toEqual([]);
  });

  it("two files that import each other are refused", () => {
    expect(
      refused.filter((line) => line.startsWith("no file imports itself by a detour: app/_core/loops")),
    ).not.toEqual([]);
  });

  it.each(["app/_core/dates/edtf-syntax.ts", "app/_adapters/fits.ts"])("%s is let through", (from) => {
    expect(refused.filter((line) => line.includes(`: ${from} -> `))).toEqual([]);
  });
});
