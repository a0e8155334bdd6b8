import { type ChildProcess, execFile, spawn } from "node:child_process";
import { createWriteStream, mkdirSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the app under test answers, with no slash at the end. */
    readonly appAddress: string;
    /** Its data folder: the embedded database and the images. */
    readonly appData: string;
  }
}

const root = fileURLToPath(new URL("../..", import.meta.url));
const runFile = promisify(execFile);

/**
 * Serves the built app, with the demo in an embedded database in a folder of its own, for the tests that talk to
 * it as people do. Anything that the app writes to its standard error is a failure of the whole run.
 *
 * COUNTERMARK_TEST_URL names a host that is up already, with the demo in it, to be tested instead; its data folder
 * is COUNTERMARK_DATA's or else `data`.
 */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const up = process.env.COUNTERMARK_TEST_URL;
  if (up) {
    project.provide("appAddress", up.replace(/\/+$/, ""));
    project.provide("appData", resolve(root, process.env.COUNTERMARK_DATA ?? "data"));
    return async () => undefined;
  }
  const data = await mkdtemp(join(tmpdir(), "countermark-test-"));
  const port = await freePort();
  const { DATABASE_URL: _, ...rest } = process.env;
  const env: NodeJS.ProcessEnv = {
    ...rest,
    COUNTERMARK_DATA: data,
    COUNTERMARK_DEMO: "1",
    COUNTERMARK_REVIEW_HOURS: "0.001",
    PORT: String(port),
    NODE_ENV: "production",
    NEXT_TELEMETRY_DISABLED: "1",
  };
  await runFile(process.execPath, ["scripts/build.mjs"], { cwd: root, env });
  await runFile(process.execPath, ["node_modules/tsx/dist/cli.mjs", "scripts/prepare-database.ts"], {
    cwd: root,
    env,
  });
  const app = serve(port, env);
  const address = `http://127.0.0.1:${port}`;
  await app.answers(address);
  project.provide("appAddress", address);
  project.provide("appData", data);
  return async () => {
    const complaints = await app.end();
    await rm(data, { recursive: true, force: true });
    if (complaints) throw new Error(`The app wrote errors while it was tested:\n${complaints}`);
  };
}

/** @param log name of the file in tests/.output that gets what it says */
export function serve(port: number, env: NodeJS.ProcessEnv, log = "app.log") {
  const words = [
    "node_modules/next/dist/bin/next",
    "start",
    "--hostname",
    "127.0.0.1",
    "--port",
    String(port),
  ];
  const child: ChildProcess = spawn(process.execPath, words, {
    cwd: root,
    env,
    stdio: ["ignore", "pipe", "pipe"],
  });
  mkdirSync(join(root, "tests/.output"), { recursive: true });
  child.stdout?.pipe(createWriteStream(join(root, "tests/.output", log)));
  let complaints = "";
  child.stderr?.setEncoding("utf8").on("data", (text: string) => {
    complaints += text;
  });
  const ended = new Promise<void>((resolve) => child.once("close", () => resolve()));
  return {
    async answers(address: string): Promise<void> {
      const giveUp = Date.now() + 60_000;
      for (;;) {
        if (child.exitCode !== null) throw new Error(`The app ended while it was started:\n${complaints}`);
        try {
          await fetch(address);
          return;
        } catch (error) {
          if (Date.now() > giveUp) throw error;
          await new Promise((done) => setTimeout(done, 200));
        }
      }
    },
    async end(): Promise<string> {
      const died = child.exitCode !== null ? "\nIt ended before it was told to." : "";
      child.kill("SIGTERM");
      await ended;
      return complaints + died;
    },
  };
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() =>
        address && typeof address === "object" ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}
