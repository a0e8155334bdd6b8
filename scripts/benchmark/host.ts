import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createServer } from "node:net";
import { fileURLToPath } from "node:url";
import type { LookUpView } from "#core/look-ups/look-up";
import type { Query } from "./queries.ts";

/** What people who ask a host see, in milliseconds, and what it takes, in bytes. */
export type HostFigures = {
  readonly startMs: number;
  readonly decode: readonly number[];
  readonly preprocess: readonly number[];
  readonly embed: readonly number[];
  readonly search: readonly number[];
  /** From sending the photograph to the last byte of the answer. */
  readonly answer: readonly number[];
  readonly page: readonly number[];
  /** Share of queries whose own entry came first. */
  readonly first: number;
  readonly residentBytes: number;
  readonly peakBytes: number;
};

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Serves the built app as `npm start` does, looks every query up over HTTP, one after the other, and ends it. */
export async function measureHost(
  settings: Readonly<Record<string, string>>,
  queries: readonly Query[],
): Promise<HostFigures> {
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const began = performance.now();
  const words = [
    "node_modules/next/dist/bin/next",
    "start",
    "--hostname",
    "127.0.0.1",
    "--port",
    String(port),
  ];
  const env = { ...process.env, ...settings, PORT: String(port), NODE_ENV: "production" as const };
  const host = spawn(process.execPath, words, { cwd: root, env, stdio: ["ignore", "ignore", "inherit"] });
  try {
    await answers(address);
    const startMs = performance.now() - began;
    const asked: Asked[] = [];
    // The first look-up loads and warms everything: it is asked twice, and counted once.
    for (const query of [...queries.slice(0, 1), ...queries]) asked.push(await ask(address, query));
    const counted = asked.slice(1);
    const of = (part: keyof LookUpView["timings"]) => counted.map((one) => one.view.timings[part]);
    return {
      startMs,
      decode: of("decode"),
      preprocess: of("preprocess"),
      embed: of("embed"),
      search: of("search"),
      answer: counted.map((one) => one.answerMs),
      page: counted.map((one) => one.pageMs),
      first: counted.filter((one) => one.view.matches[0]?.entry.slug === one.slug).length / counted.length,
      residentBytes: memoryOf(host.pid, "VmRSS"),
      peakBytes: memoryOf(host.pid, "VmHWM"),
    };
  } finally {
    const ended = new Promise((resolve) => host.once("close", resolve));
    if (host.exitCode === null) {
      host.kill("SIGTERM");
      await ended;
    }
  }
}

type Asked = {
  readonly view: LookUpView;
  readonly answerMs: number;
  readonly pageMs: number;
  readonly slug: string;
};

async function ask(address: string, { bytes, box, slug }: Query): Promise<Asked> {
  const form = new FormData();
  form.set("photograph", new File([bytes], "query.jpg", { type: "image/jpeg" }));
  for (const [name, value] of Object.entries(box)) form.set(name, String(value));
  const sent = performance.now();
  const headers = { accept: "application/json" };
  const response = await fetch(`${address}/api/look-ups`, { method: "POST", body: form, headers });
  if (!response.ok) throw new Error(`A look-up was answered ${response.status}: ${await response.text()}`);
  const view = (await response.json()) as LookUpView;
  const answered = performance.now();
  const page = await fetch(`${address}/look-ups/${view.id}`);
  if (!page.ok) throw new Error(`A look-up's page was answered ${page.status}.`);
  await page.text();
  return { view, answerMs: answered - sent, pageMs: performance.now() - answered, slug };
}

async function answers(address: string): Promise<void> {
  const giveUp = performance.now() + 120_000;
  for (;;) {
    try {
      await (await fetch(address)).text();
      return;
    } catch (error) {
      if (performance.now() > giveUp) throw error;
      await new Promise((done) => setTimeout(done, 25));
    }
  }
}

/** A figure of the kernel's about a process, in bytes; NaN where the kernel does not say. */
function memoryOf(pid: number | undefined, name: "VmRSS" | "VmHWM"): number {
  try {
    const line = readFileSync(`/proc/${pid}/status`, "utf8").match(new RegExp(`^${name}:\\s+(\\d+) kB`, "m"));
    return Number(line?.[1]) * 1024;
  } catch {
    return Number.NaN;
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() =>
        typeof address === "object" && address
          ? resolve(address.port)
          : reject(new Error("There is no free port.")),
      );
    });
  });
}
