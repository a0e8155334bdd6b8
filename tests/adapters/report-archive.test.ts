import { execFileSync, spawnSync } from "node:child_process";
import { createHash, randomBytes } from "node:crypto";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { packReport } from "#adapters/report/report-archive";

const FILES = [
  { path: "file.json", bytes: new TextEncoder().encode('{"title":"Łódź"}\n') },
  { path: "photographs/001-abc.jpg", bytes: new Uint8Array(randomBytes(5000)) },
  { path: "documents/transcription-001.txt", bytes: new TextEncoder().encode("Liebe Oda, …\n".repeat(500)) },
  { path: "report.pdf", bytes: new Uint8Array(randomBytes(900)) },
];
type Unpacked = Readonly<Record<string, Uint8Array>>;

/** As `sha256sum --check --strict` reads a list of sums: files whose sum is another, or that are not there. */
function check(unpacked: Unpacked): readonly string[] {
  const text = new TextDecoder().decode(unpacked["manifest-sha256.txt"]);
  return text
    .replace(/\n$/, "")
    .split("\n")
    .flatMap((line) => {
      const [, sum, path] = /^([0-9a-f]{64}) [ *]([^\\\n]+)$/.exec(line) ?? [];
      if (sum === undefined || path === undefined) return [`not a line of sums: ${line}`];
      const bytes = unpacked[path];
      return bytes && createHash("sha256").update(bytes).digest("hex") === sum ? [] : [path];
    });
}

describe("the archive of a report", () => {
  it("holds every file as it was and one line of sums for each, and none for the list itself", async () => {
    const unpacked: Unpacked = unzipSync(await packReport(FILES));
    const paths = FILES.map(({ path }) => path);
    expect(Object.keys(unpacked).toSorted()).toEqual(["manifest-sha256.txt", ...paths].toSorted());
    for (const { path, bytes } of FILES) expect(Buffer.from(unpacked[path] ?? []).equals(bytes)).toBe(true);
    const listed = new TextDecoder().decode(unpacked["manifest-sha256.txt"]).match(/(?<= {2}).+$/gm);
    expect(listed).toEqual(paths);
    expect(check(unpacked)).toEqual([]);
  });

  it("shows by its sums which file was changed or taken out", async () => {
    const unpacked: Unpacked = unzipSync(await packReport(FILES));
    const { "report.pdf": _, ...rest } = unpacked;
    const changed = { ...rest, "file.json": new TextEncoder().encode('{"title":"Lodz"}\n') };
    expect(check(changed)).toEqual(["file.json", "report.pdf"]);
  });

  it.skipIf(spawnSync("sha256sum", ["--version"]).status !== 0)(
    "is found right by sha256sum itself where a machine has it",
    async () => {
      const folder = mkdtempSync(join(tmpdir(), "countermark-archive-"));
      try {
        for (const [path, bytes] of Object.entries(unzipSync(await packReport(FILES)))) {
          mkdirSync(dirname(join(folder, path)), { recursive: true });
          writeFileSync(join(folder, path), bytes);
        }
        const args = ["--check", "--strict", "manifest-sha256.txt"];
        const said = execFileSync("sha256sum", args, { cwd: folder, encoding: "utf8" });
        expect(said.trim().split("\n")).toEqual(FILES.map(({ path }) => `${path}: OK`));
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  );
});
