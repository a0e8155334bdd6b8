import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, inject, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

it("a second start on the same data folder is told who has it, and ends", async () => {
  const { status, output } = await start(inject("appData"));
  expect(status).toBe(1);
  expect(output).toMatch(/in use by process \d+ since 20\d\d-\d\d-\d\dT/);
  expect(output).toContain(`answers at ${inject("appAddress")}`);
  expect((await fetch(inject("appAddress"))).status).toBe(200);
});

function start(data: string): Promise<{ status: unknown; output: string }> {
  const { DATABASE_URL: _, ...env } = process.env;
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ["scripts/start.mjs"],
      { cwd: root, env: { ...env, COUNTERMARK_DATA: data }, timeout: 50_000 },
      (error, out, problems) => resolve({ status: error?.code ?? 0, output: out + problems }),
    );
  });
}
