import { createHash, randomBytes } from "node:crypto";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { packReport } from "#adapters/report/report-archive";

const FILES = [
  { path: "file.json", bytes: new TextEncoder().encode('{"title":"Łódź"}\n') },
  { path: "photographs/001-abc.jpg", bytes: new Uint8Array(randomBytes(5000)) },
  { path: "report.pdf", bytes: new Uint8Array(randomBytes(900)) },
];
const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

describe("the archive of a report", () => {
  it("holds every file as it was, and a manifest whose sums are theirs", async () => {
    const unpacked = unzipSync(await packReport(FILES));
    const manifest = new TextDecoder().decode(unpacked["manifest-sha256.txt"]);
    const lines = manifest.trimEnd().split("\n");
    expect(Object.keys(unpacked).toSorted()).toEqual(
      ["manifest-sha256.txt", ...FILES.map(({ path }) => path)].toSorted(),
    );
    expect(lines).toHaveLength(FILES.length);
    for (const line of lines) {
      const [sum, path] = line.split("  ");
      expect(sha256(unpacked[path ?? ""] ?? new Uint8Array())).toBe(sum);
    }
    for (const { path, bytes } of FILES)
      expect(sha256(unpacked[path] ?? new Uint8Array())).toBe(sha256(bytes));
  });
});
