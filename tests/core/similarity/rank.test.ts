import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { likenessOf } from "#core/similarity/likeness";
import { type Hit, rankEntries } from "#core/similarity/rank";

const hit = (entry: string, photographId: string, similarity: number, turn = 0): Hit => ({
  entry,
  photographId,
  similarity,
  turn,
});

describe("ranking entries", () => {
  it("takes the best photograph of each entry over all turns, and counts its photographs once", () => {
    const ranked = rankEntries(
      [hit("a", "1", 0.5), hit("a", "1", 0.7, 90), hit("a", "2", 0.6), hit("b", "3", 0.65)],
      10,
    );
    expect(ranked).toEqual([
      { entry: "a", best: hit("a", "1", 0.7, 90), hits: 2 },
      { entry: "b", best: hit("b", "3", 0.65), hits: 1 },
    ]);
  });

  it("gives no more than asked for", () => {
    expect(rankEntries([hit("a", "1", 0.5), hit("b", "2", 0.4)], 1)).toHaveLength(1);
  });

  it("does not depend on the order of the hits", () => {
    const hits = fc.array(
      fc.record({
        entry: fc.constantFrom("a", "b", "c"),
        photographId: fc.constantFrom("1", "2", "3"),
        similarity: fc.constantFrom(0.1, 0.5, 0.9),
        turn: fc.constantFrom(0, 30, 60),
      }),
    );
    fc.assert(
      fc.property(hits, fc.infiniteStream(fc.integer()), (given, keys) => {
        const order = given.map((h) => ({ h, key: keys.next().value ?? 0 })).sort((x, y) => x.key - y.key);
        expect(
          rankEntries(
            order.map(({ h }) => h),
            5,
          ),
        ).toEqual(rankEntries(given, 5));
      }),
    );
  });
});

describe("likeness in words", () => {
  const at = { veryClose: 0.8, close: 0.6, some: 0.4, noneBelow: 0.5 };

  it.each([
    [0.8, "very close"],
    [0.79, "close"],
    [0.6, "close"],
    [0.4, "some"],
    [0.39, "little"],
  ] as const)("%d is %s", (similarity, words) => expect(likenessOf(similarity, at)).toBe(words));
});
