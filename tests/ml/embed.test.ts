import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { embed, embedQuery, embedReference, modelFacts, turnsOf } from "#ml/embed";
import { decode, prepare } from "#ml/preprocess";
import { cosine, meanDifference } from "./vectors.ts";

const patchOf = (name: string) =>
  decode(join(import.meta.dirname, "..", "fixtures", "preprocess", `${name}.png`));

describe("vectors", async () => {
  const facts = await modelFacts();
  const pictures = await Promise.all(
    ["grey", "colour", "wide", "alpha"].map(async (name) => prepare(await patchOf(name))),
  );

  it("have the model's length and unit length", async () => {
    for (const { vector } of await embed(pictures)) {
      expect(vector).toHaveLength(facts.dimension);
      expect(Math.hypot(...vector)).toBeCloseTo(1, 4);
    }
  });

  it("are the same numbers every time", async () => {
    expect(await embed(pictures)).toEqual(await embed(pictures));
  });

  it("do not depend on what else is in the batch, nor on its size", async () => {
    const many = Array.from({ length: 20 }, (_, i) => pictures[i % 4] ?? new Float32Array());
    const together = await embed(many);
    expect(together).toHaveLength(20);
    for (const [i, { vector }] of together.entries()) {
      const [alone] = await embed([many[i] ?? new Float32Array()]);
      expect(meanDifference(alone?.vector ?? [], vector)).toBeLessThan(1e-5);
    }
  });

  it("are none for none", async () => expect(await embed([])).toEqual([]));

  it("are refused to a picture of another size", async () => {
    await expect(embed([new Float32Array(100)])).rejects.toThrow(
      "picture: must hold 160 x 160 numbers. Received 100.",
    );
  });
});

describe("a query", async () => {
  const patch = await patchOf("turned");

  it("is turned in equal steps all the way round, beginning upright", async () => {
    const { queryTurns } = await modelFacts();
    const turned = await embedQuery(patch);
    expect(turned.map(({ turn }) => turn)).toEqual(
      Array.from({ length: queryTurns }, (_, k) => (k * 360) / queryTurns),
    );
    expect(cosine(turned[0]?.vector ?? [], (await embedReference(patch)).vector)).toBeCloseTo(1, 5);
  });

  it("is the same whether a quarter turn is cut anew or made from another", () => {
    const quarter = turnsOf(patch, 4);
    for (const { turn, picture } of quarter)
      expect(meanDifference(picture, prepare(patch, turn))).toBeLessThan(1e-4);
  });

  it.each([0, -1, 1.5, Number.NaN])("cannot be turned %d times", (turns) => {
    expect(() => turnsOf(patch, turns)).toThrow(`turns: must be a whole number above 0. Received ${turns}.`);
  });
});
