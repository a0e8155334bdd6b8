import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { DemoMember } from "#core/members/demo-member";

/** The demo's ready accounts; none where the demo is not offered. */
export function createDemoMembers(demoFolder: string | null) {
  let read: Promise<readonly DemoMember[]> | undefined;
  return {
    all(): Promise<readonly DemoMember[]> {
      if (demoFolder === null) return Promise.resolve([]);
      read ??= readFile(join(/* turbopackIgnore: true */ demoFolder, "..", "members.json"), "utf8").then(
        (text) => JSON.parse(text) as readonly DemoMember[],
      );
      return read;
    },
  };
}
