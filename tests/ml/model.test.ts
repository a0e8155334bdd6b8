import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { readModelFacts, readNetwork } from "#ml/model";

const SHIPPED = join(import.meta.dirname, "..", "..", "ml", "model");
const folder = mkdtempSync(join(tmpdir(), "countermark-model-"));
afterAll(() => rmSync(folder, { recursive: true }));

const writeFacts = (changes: Record<string, unknown>) => {
  const facts: Record<string, unknown> = JSON.parse(readFileSync(join(SHIPPED, "model.json"), "utf8"));
  writeFileSync(join(folder, "model.json"), JSON.stringify({ ...facts, ...changes }));
};

describe("the shipped model", () => {
  it("is the file that its facts describe, and 12 MB or less", async () => {
    const facts = await readModelFacts();
    const network = await readNetwork(facts);
    expect(facts.id).toMatch(/^marks@\d+\.\d+\.\d+$/);
    expect(network.byteLength).toBeLessThanOrEqual(12_000_000);
    const { veryClose, close, some } = facts.likeness;
    expect([veryClose, close, some]).toEqual([veryClose, close, some].sort((a, b) => b - a));
  });
});

describe("a model that was tampered with", () => {
  it("is refused with both sums when one bit of the network differs", async () => {
    const { file } = await readModelFacts();
    writeFacts({});
    copyFileSync(join(SHIPPED, file), join(folder, file));
    const facts = await readModelFacts(folder);
    await expect(readNetwork(facts, folder)).resolves.toBeDefined();
    const bytes = readFileSync(join(folder, file));
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
    writeFileSync(join(folder, file), bytes);
    await expect(readNetwork(facts, folder)).rejects.toThrow(
      new RegExp(`marks.onnx: SHA-256 must be ${facts.sha256} .* Received [0-9a-f]{64}`),
    );
  });

  it("is refused when the network is missing", async () => {
    const facts = await readModelFacts();
    await expect(readNetwork({ ...facts, file: "gone.onnx" }, folder)).rejects.toThrow(
      /gone\.onnx: must be a readable file \(COUNTERMARK_MODEL names the folder\)/,
    );
  });

  it.each([
    ["sha256", "1234", 'sha256 must be a text matching /^[0-9a-f]{64}$/. Received "1234".'],
    ["file", "../marks.onnx", 'Received "../marks.onnx".'],
    ["side", 0, "side must be a whole number above 0. Received 0."],
    ["version", undefined, "version must be a text matching /^\\d+\\.\\d+\\.\\d+$/. Received undefined."],
    ["likeness", { veryClose: 2 }, "likeness.veryClose must be a number from -1 to 1. Received 2."],
    ["likeness", null, "likeness.veryClose must be a number from -1 to 1. Received undefined."],
  ])("names the field, the rule and the value when %s is %j", async (field, value, message) => {
    writeFacts({ [field]: value });
    await expect(readModelFacts(folder)).rejects.toThrow(message);
  });
});
