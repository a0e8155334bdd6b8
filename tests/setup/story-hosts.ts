import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inject } from "vitest";
import { makeThrowAwayDatabase } from "../../scripts/throw-away-database.ts";
import { freePort, serve } from "./running-app.ts";

/** A host to tell the story on, and the settings by which the operator's programs find it. */
export type Host = {
  readonly address: string;
  readonly env: Readonly<Record<string, string>>;
  end(): Promise<void>;
};

/** The app under test, on the embedded database; the demo is in it. */
export const onEmbedded = async (): Promise<Host> => ({
  address: inject("appAddress"),
  env: { COUNTERMARK_DATA: inject("appData") },
  end: async () => undefined,
});

/** The same build once more, on an empty database of its own on the server that TEST_DATABASE_URL names. */
export async function onServer(): Promise<Host> {
  const database = await makeThrowAwayDatabase(process.env.TEST_DATABASE_URL ?? "");
  const data = await mkdtemp(join(tmpdir(), "countermark-story-"));
  const port = await freePort();
  const env = { COUNTERMARK_DATA: data, DATABASE_URL: database.url };
  const settings = { COUNTERMARK_REVIEW_HOURS: "0.001", PORT: String(port), NODE_ENV: "production" as const };
  const app = serve(port, { ...process.env, ...env, ...settings, COUNTERMARK_DEMO: "0" }, "story.log");
  const address = `http://127.0.0.1:${port}`;
  await app.answers(address);
  return {
    address,
    env,
    async end() {
      const complaints = await app.end();
      await database.drop();
      await rm(data, { recursive: true, force: true });
      if (complaints) throw new Error(`The app on the server wrote errors:\n${complaints}`);
    },
  };
}
