import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));
const fromHere = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Tests that talk to the built app as it is served. */
const RUNNING = ["tests/browser/**/*.test.ts", "tests/web/**/*.test.ts"];
/** Tests that open databases: an embedded one takes up to half a gigabyte. */
const DATABASES = ["tests/adapters/**/*.test.ts"];

/**
 * Three groups, one after the other, so that what is measured in a browser is not slowed by the rest:
 * plain ones, those that open databases, those against the running app.
 */
export default defineConfig({
  root,
  test: {
    projects: [
      {
        root,
        test: {
          name: "plain",
          include: ["tests/**/*.test.ts"],
          exclude: [...RUNNING, ...DATABASES],
          setupFiles: [fromHere("setup/quiet-console.ts")],
          testTimeout: 20_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        root,
        test: {
          name: "databases",
          include: DATABASES,
          globalSetup: [fromHere("setup/announce-databases.ts")],
          setupFiles: [fromHere("setup/quiet-console.ts")],
          pool: "forks",
          maxWorkers: 2,
          testTimeout: 30_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        root,
        test: {
          name: "running",
          include: RUNNING,
          globalSetup: [fromHere("setup/running-app.ts")],
          setupFiles: [fromHere("setup/quiet-console.ts")],
          pool: "forks",
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
