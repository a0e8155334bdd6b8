import { execFile } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, it } from "vitest";
import { readModelFacts } from "#ml/model";
import { askForLookUp, lookUpToTry } from "../setup/ask-for-look-up.ts";
import { freePort, serve } from "../setup/running-app.ts";
import { writeSmallModel } from "../setup/small-network.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const runFile = promisify(execFile);
const LONGEST = 240_000;

let folder: string;
let data: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "countermark-models-"));
  data = join(folder, "data");
  await writeSmallModel(join(folder, "small"), "1.0.0", 8);
  await writeSmallModel(join(folder, "fine"), "2.0.0", 16);
  await runFile(process.execPath, ["node_modules/tsx/dist/cli.mjs", "scripts/prepare-database.ts"], {
    cwd: root,
    env: settings("small"),
  });
}, LONGEST);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The demo in a data folder of its own, with a model in place; the shipped one when none is named. */
function settings(model: string | null, port = 0): NodeJS.ProcessEnv {
  const { DATABASE_URL: _, COUNTERMARK_MODEL: __, ...rest } = process.env;
  return {
    ...rest,
    COUNTERMARK_DATA: data,
    COUNTERMARK_DEMO: "1",
    ...(model === null ? {} : { COUNTERMARK_MODEL: join(folder, model) }),
    PORT: String(port),
    NODE_ENV: "production",
    NEXT_TELEMETRY_DISABLED: "1",
  };
}

/** Serves the built app and ends it; what it wrote to its standard error fails the test. */
async function whileServed<T>(model: string | null, work: (address: string) => Promise<T>): Promise<T> {
  const port = await freePort();
  const app = serve(port, settings(model, port));
  const address = `http://127.0.0.1:${port}`;
  let complaints = "";
  try {
    await app.answers(address);
    return await work(address);
  } finally {
    complaints = await app.end();
    expect(complaints).toBe("");
  }
}

it(
  "the demo is re-embedded under another model while look-ups are answered, and says which answered",
  async () => {
    const shipped = (await readModelFacts()).id;
    const answered: string[] = [];
    await whileServed(null, async (address) => {
      const giveUp = Date.now() + (LONGEST * 3) / 4;
      for (;;) {
        const { model, matches } = await askForLookUp(address);
        expect(matches.length).toBeGreaterThan(0);
        answered.push(model);
        if (model === shipped || Date.now() > giveUp) break;
        // People leave gaps, in which the host gets on.
        await wait(1_000);
      }
    });
    expect(answered[0]).toBe("squares@1.0.0");
    expect(answered.at(-1)).toBe(shipped);
    expect(answered).toEqual([...answered].sort((a, b) => (a === b ? 0 : a === shipped ? 1 : -1)));
  },
  LONGEST,
);

it(
  "with the old model's files gone, the page and the address say how far the new one has come",
  async () => {
    await rm(join(data, "models"), { recursive: true });
    // With its images gone, no photograph can be embedded, and the reference stays as it is.
    await rm(join(data, "images"), { recursive: true });
    await whileServed("fine", async (address) => {
      const answer = await lookUpToTry(address);
      expect(answer.status).toBe(503);
      expect(await answer.json()).toMatchObject({
        error: { rule: "preparing", received: "squares@2.0.0", params: { done: 0, of: expect.any(Number) } },
      });
      const page = await (await fetch(address)).text();
      expect(page).toMatch(/being prepared for a new model, squares@2\.0\.0: 0 of [1-9]\d* photographs/);
    });
  },
  LONGEST,
);
