import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { filesOf, readModelFacts, readNetwork } from "#ml/model";

const SHIPPED = join(import.meta.dirname, "..", "..", "ml", "model");
const folder = mkdtempSync(join(tmpdir(), "countermark-model-"));
afterAll(() => rmSync(folder, { recursive: true }));

const writeFacts = (changes: Record<string, unknown>) => {
  const facts: Record<string, unknown> = JSON.parse(readFileSync(join(SHIPPED, "model.json"), "utf8"));
  writeFileSync(join(folder, "model.json"), JSON.stringify({ ...facts, ...changes }));
};

describe("the shipped model", () => {
  it("is the files that its facts describe, and 18 MB or less together", async () => {
    const facts = await readModelFacts();
    let bytes = 0;
    for (const file of filesOf(facts)) bytes += (await readNetwork(file)).byteLength;
    expect(facts.id).toMatch(/^marks@\d+\.\d+\.\d+$/);
    expect(bytes).toBeLessThanOrEqual(18_000_000);
    const { veryClose, close, some } = facts.likeness;
    expect([veryClose, close, some]).toEqual([veryClose, close, some].sort((a, b) => b - a));
  });
});

describe("a model that was tampered with", () => {
  it("is refused with both sums when one bit of the network differs", async () => {
    const [first] = filesOf(await readModelFacts());
    if (!first) throw new Error("The model names no file.");
    const { file } = first;
    copyFileSync(join(SHIPPED, file), join(folder, file));
    await expect(readNetwork(first, folder)).resolves.toBeDefined();
    const bytes = readFileSync(join(folder, file));
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
    writeFileSync(join(folder, file), bytes);
    await expect(readNetwork(first, folder)).rejects.toThrow(
      new RegExp(`marks.onnx: SHA-256 must be ${first.sha256} .* Received [0-9a-f]{64}`),
    );
  });

  it("is refused when the network is missing", async () => {
    const [first] = filesOf(await readModelFacts());
    await expect(readNetwork({ sha256: first?.sha256 ?? "", file: "gone.onnx" }, folder)).rejects.toThrow(
      /gone\.onnx: must be a readable file \(COUNTERMARK_MODEL names the folder\)/,
    );
  });

  it.each([
    ["networks", [], "networks must be a list of one or more. Received []."],
    [
      "networks",
      [{ file: "../marks.onnx" }],
      'networks[0].file must be a text matching /^[\\w.-]+\\.onnx$/. Received "../marks.onnx".',
    ],
    [
      "networks",
      [{ file: "a.onnx", sha256: "1234" }],
      'networks[0].sha256 must be a text matching /^[0-9a-f]{64}$/. Received "1234".',
    ],
    ["dimension", 256, "dimension must be 512, what its networks give together. Received 256."],
    ["pairs", { file: "pairs.onnx" }, "pairs.sha256 must be a text"],
    ["side", 0, "side must be a whole number above 0. Received 0."],
    ["version", undefined, "version must be a text matching /^\\d+\\.\\d+\\.\\d+$/. Received undefined."],
    ["likeness", { veryClose: 2 }, "likeness.veryClose must be a number from -1 to 1. Received 2."],
    ["likeness", null, "likeness.veryClose must be a number from -1 to 1. Received undefined."],
  ])("names the field, the rule and the value when %s is %j", async (field, value, message) => {
    writeFacts({ [field]: value });
    await expect(readModelFacts(folder)).rejects.toThrow(message);
  });
});

describe("a model of the older form", () => {
  it("is one network, with no details and no pairs", async () => {
    const network = { file: "marks.onnx", sha256: "0".repeat(64), input: "x", output: "z" };
    writeFacts({ networks: undefined, pairs: undefined, dimension: 256, version: "1.0.0", ...network });
    const facts = await readModelFacts(folder);
    expect(facts).toMatchObject({ id: "marks@1.0.0", dimension: 256, pairs: null });
    expect(facts.networks).toEqual([{ ...network, dimension: 256, details: null }]);
  });

  it("can judge no pairs: that takes details", async () => {
    const network = { file: "marks.onnx", sha256: "0".repeat(64), input: "x", output: "z", dimension: 512 };
    writeFacts({ networks: [network] });
    await expect(readModelFacts(folder)).rejects.toThrow("pairs must stand beside a network with details");
  });
});
