import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from "@prisma/driver-adapter-utils";
import type * as Engine from "@prisma/schema-engine-wasm";

type EngineModule = typeof Engine & { __wbg_set_wasm(wasm: WebAssembly.Exports): void };

let loaded: Promise<EngineModule> | undefined;

/**
 * Prisma's schema engine as a library: the official WebAssembly build, so that nothing is downloaded.
 * @param schema text of schema.prisma
 * @param factory the driver adapter whose database is diffed or migrated
 */
export async function openSchemaEngine(
  schema: string,
  factory: SqlMigrationAwareDriverAdapterFactory,
): Promise<Engine.SchemaEngine> {
  loaded ??= load();
  const engine = await loaded;
  return engine.SchemaEngine.new(
    { datamodels: [["schema.prisma", schema]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
}

async function load(): Promise<EngineModule> {
  const folder = dirname(
    createRequire(join(process.cwd(), "package.json")).resolve("@prisma/schema-engine-wasm"),
  );
  const glue = pathToFileURL(join(folder, "schema_engine_bg.js")).href;
  const module = (await import(/* turbopackIgnore: true */ /* @vite-ignore */ glue)) as EngineModule;
  const bytes = await readFile(join(folder, "schema_engine_bg.wasm"));
  const { instance } = await WebAssembly.instantiate(bytes, {
    "./schema_engine_bg.js": {
      ...module,
      ...timersThatLetGo(module),
    } as unknown as WebAssembly.ModuleImports,
  });
  module.__wbg_set_wasm(instance.exports);
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      set_message(message: string) {
        throw new Error(`The schema engine failed: ${message}`);
      },
    },
  });
  (instance.exports.__wbindgen_start as () => void)();
  return module;
}

/**
 * The engine's own time-outs (ten seconds for a lock) run on after it has finished: they must not keep the process.
 */
function timersThatLetGo(module: EngineModule): Record<string, (...words: unknown[]) => unknown> {
  return Object.fromEntries(
    Object.entries(module).flatMap(([name, start]) => {
      if (!name.startsWith("__wbg_setTimeout")) return [];
      return [
        [
          name,
          (...words: unknown[]) => {
            const timer: unknown = (start as unknown as (...words: unknown[]) => unknown)(...words);
            if (timer instanceof Object && "unref" in timer && typeof timer.unref === "function")
              timer.unref();
            return timer;
          },
        ],
      ];
    }),
  );
}
