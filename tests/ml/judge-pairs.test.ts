import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { embed, embedReference, judgePairs } from "#ml/embed";
import { decode, prepare } from "#ml/preprocess";
import { drawMark } from "../setup/scratch-reference.ts";

const patchOf = (name: string) =>
  decode(join(import.meta.dirname, "..", "fixtures", "preprocess", `${name}.png`));

describe("pairs of photographs", async () => {
  const described = await embed(
    await Promise.all([1, 2, 3, 4].map(async (n) => prepare(await decode(Buffer.from(await drawMark(n)))))),
  );
  const pair = (a: number, b: number) => {
    const [query, reference] = [described[a], described[b]];
    if (!query || !reference) throw new Error("There are four marks.");
    return { query, reference };
  };

  it("have details of 64 x 10 x 10 bytes, of unit length in each cell", () => {
    for (const { details } of described) {
      expect(details).toHaveLength(6400);
      for (const cell of [0, 42, 99]) {
        const numbers = Array.from(
          { length: 64 },
          (_, channel) => (details?.[channel * 100 + cell] ?? 0) / 127,
        );
        expect(Math.hypot(...numbers)).toBeCloseTo(1, 1);
      }
    }
  });

  it("are judged likelier to show one mark when they do", async () => {
    const own = await judgePairs(described.map((_, i) => pair(i, i)));
    const others = await judgePairs(described.map((_, i) => pair(i, (i + 1) % described.length)));
    for (const [i, odds] of own.entries()) {
      expect(odds).toBeGreaterThan(0);
      expect(odds ?? 0).toBeGreaterThan((others[i] ?? 0) + 2);
    }
  });

  it("are judged alike whatever else is judged with them", async () => {
    const [alone] = await judgePairs([pair(0, 1)]);
    const [, together] = await judgePairs([pair(2, 3), pair(0, 1), pair(1, 1)]);
    expect(together).toBeCloseTo(alone ?? Number.NaN, 3);
  });

  it("are not judged without details", async () => {
    const { query, reference } = pair(0, 1);
    const bare = { ...(await embedReference(await patchOf("grey"))), details: null };
    const [first, second] = await judgePairs([
      { query, reference: bare },
      { query, reference },
    ]);
    expect(first).toBeNull();
    expect(second).toBeTypeOf("number");
    expect(await judgePairs([])).toEqual([]);
  });
});
