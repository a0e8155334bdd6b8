import { spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { afterEach, describe, expect, it } from "vitest";
import { createAligner } from "#adapters/aligner";
import { createWorkerPool, type WorkerPool } from "#adapters/worker-pool";

const root = join(import.meta.dirname, "..", "..");
const SLOW = join(root, "tests/setup/slow-worker.mjs");

type Slow = { readonly milliseconds: number; readonly failure?: string };
const pools: WorkerPool<Slow, number>[] = [];
const slowPool = (waiting: number, milliseconds: number) => {
  const pool = createWorkerPool<Slow, number>("alignPair", { threads: 1, waiting, milliseconds }, SLOW);
  pools.push(pool);
  return pool;
};
afterEach(async () => {
  for (const pool of pools.splice(0)) await pool.close();
});

describe("work in a thread of its own", { timeout: 60_000 }, () => {
  it("leaves the process free: alignments hardly delay what else it does", async () => {
    const aligner = createAligner();
    const photograph = async (number: number) => ({
      sha256: `${number}`,
      bytes: await readFile(join(root, `seed/demo/photographs/brandreth-sons-schooner-${number}.webp`)),
      region: { x: 0, y: 0, width: 400, height: 400, turn: 0 },
    });
    const [first, second] = [await photograph(1), await photograph(2)];
    // Loads the library.
    await aligner.align(first, first);
    const delay = monitorEventLoopDelay({ resolution: 5 });
    delay.enable();
    const began = performance.now();
    const found = await Promise.all([
      aligner.align(first, second),
      aligner.align(second, first),
      aligner.align(second, second),
    ]);
    const took = performance.now() - began;
    delay.disable();
    expect(found.map((each) => each.ok)).toEqual([true, true, true]);
    // In the process's own thread each of the six photographs would block it for a tenth of the whole or more.
    expect(took).toBeGreaterThan(200);
    expect(delay.max / 1e6).toBeLessThan(Math.max(50, took / 12));
  });

  it("is refused when too much waits, naming how much", async () => {
    const pool = slowPool(2, 10_000);
    // While a thread starts, one more may wait for it.
    await pool.run({ milliseconds: 1 });
    const asked = [0, 1, 2, 3].map(() => pool.run({ milliseconds: 100 }));
    const answers = await Promise.all(asked);
    expect(answers.slice(0, 3).map((each) => each.ok)).toEqual([true, true, true]);
    expect(answers[3]).toEqual({ ok: false, error: { field: "request", rule: "busy", received: "2" } });
    expect(await pool.run({ milliseconds: 1 })).toEqual({ ok: true, value: 1 });
  });

  it("is ended when it takes too long, and the next work is done", async () => {
    const pool = slowPool(2, 1500);
    expect(await pool.run({ milliseconds: 60_000 })).toEqual({
      ok: false,
      error: {
        field: "request",
        rule: "too-long",
        received: expect.stringMatching(/^1\.\d s$/),
        params: { seconds: 1.5 },
      },
    });
    expect(await pool.run({ milliseconds: 1 })).toEqual({ ok: true, value: 1 });
  });

  it("fails in the words of the work itself", async () => {
    await expect(slowPool(2, 10_000).run({ milliseconds: 1, failure: "no more memory" })).rejects.toThrow(
      "no more memory",
    );
  });

  it("doesn't keep a process from ending", () => {
    const program = `
      import { createWorkerPool } from "#adapters/worker-pool";
      const limits = { threads: 1, waiting: 1, milliseconds: 10000 };
      const answer = await createWorkerPool("alignPair", limits, ${JSON.stringify(SLOW)}).run({ milliseconds: 1 });
      process.stdout.write(JSON.stringify(answer));`;
    const words = ["--import", "tsx", "--input-type=module", "--eval", program];
    const { stdout, stderr, status } = spawnSync(process.execPath, words, {
      cwd: root,
      encoding: "utf8",
      timeout: 20_000,
    });
    expect({ stdout, stderr, status }).toEqual({ stdout: '{"ok":true,"value":1}', stderr: "", status: 0 });
  });
});
