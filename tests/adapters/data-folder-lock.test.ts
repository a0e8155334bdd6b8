import { spawnSync } from "node:child_process";
import { mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DataFolderInUse, holderOf, lockDataFolder } from "#adapters/data-folder-lock";

describe("the lock of a data folder", () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "countermark-lock-"));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  it("tells a second comer who has it, since when and where it answers", () => {
    const lock = lockDataFolder(folder);
    lock.announce("http://127.0.0.1:3000");
    expect(() => lockDataFolder(folder)).toThrow(DataFolderInUse);
    expect(() => lockDataFolder(folder)).toThrow(
      new RegExp(`process ${process.pid} since .*http://127.0.0.1:3000`),
    );
    expect(holderOf(folder)).toMatchObject({ pid: process.pid, address: "http://127.0.0.1:3000" });
    lock.release();
    expect(holderOf(folder)).toBeNull();
    lockDataFolder(folder).release();
  });

  it("is taken over from a process that is gone", async () => {
    const { pid } = spawnSync(process.execPath, ["-e", ""]);
    await writeFile(
      join(folder, "lock.json"),
      JSON.stringify({ pid, since: "2020", address: null, key: "", started: null }),
    );
    const lock = lockDataFolder(folder);
    expect(holderOf(folder)).toMatchObject({ pid: process.pid });
    lock.release();
  });

  it("is taken over when the number now belongs to a later process", async () => {
    const stale = { pid: process.pid, since: "2020", address: null, key: "", started: "1" };
    await writeFile(join(folder, "lock.json"), JSON.stringify(stale));
    expect(holderOf(folder)).toBeNull();
    lockDataFolder(folder).release();
  });

  it("can be read by nobody else, since it holds the operator's key", async () => {
    const lock = lockDataFolder(folder);
    expect((await stat(join(folder, "lock.json"))).mode & 0o077).toBe(0);
    expect(JSON.parse(await readFile(join(folder, "lock.json"), "utf8"))).toMatchObject({ key: lock.key });
    lock.release();
  });
});
