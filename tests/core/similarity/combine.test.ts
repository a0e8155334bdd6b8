import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { combineSights, combineSimilarities, type Sight, unseen } from "#core/similarity/combine";
import type { Ranked } from "#core/similarity/rank";

const ranked = (entry: string, similarity: number, hits = 1): Ranked => ({
  entry,
  best: { photographId: `${entry} 1`, entry, similarity, turn: 0 },
  hits,
});

const similarity = fc.double({ min: -1, max: 1, noNaN: true });
const similarities = fc.array(similarity, { minLength: 1, maxLength: 6 });

describe("similarities of several photographs with one entry", () => {
  it("do not depend on the order of the photographs", () => {
    const shuffled = similarities.chain((given) =>
      fc.tuple(
        fc.constant(given),
        fc.shuffledSubarray(given, { minLength: given.length, maxLength: given.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([given, other]) => {
        expect(combineSimilarities(other)).toBeCloseTo(combineSimilarities(given), 12);
      }),
    );
  });

  it("come to the one similarity when one photograph is given, or the same one several times", () => {
    fc.assert(
      fc.property(similarity, fc.integer({ min: 1, max: 6 }), (each, times) => {
        expect(combineSimilarities(Array.from({ length: times }, () => each))).toBeCloseTo(each, 12);
      }),
    );
  });

  it("lie between the mean and the best, and so a worse photograph takes at most half of its distance", () => {
    fc.assert(
      fc.property(similarities, similarity, (given, other) => {
        const before = combineSimilarities(given);
        const best = Math.max(...given);
        const worse = Math.min(other, best);
        const after = combineSimilarities([...given, worse]);
        expect(after).toBeLessThanOrEqual(best + 1e-12);
        expect(after).toBeGreaterThanOrEqual((best + Math.min(...given, worse)) / 2 - 1e-12);
        expect(combineSimilarities([...given, best])).toBeGreaterThanOrEqual(before - 1e-12);
      }),
    );
  });
});

describe("one ranking from several photographs", () => {
  const sights: readonly Sight[] = [
    { photograph: 1, ranked: [ranked("a", 0.9, 3), ranked("b", 0.7), ranked("c", 0.6)] },
    { photograph: 2, ranked: [ranked("b", 0.95), ranked("a", 0.8, 1), ranked("c", 0.7)] },
  ];

  it("shows each entry by its nearest hit, with the combined similarity and what each photograph saw", () => {
    const combined = combineSights(sights, 10);
    expect(combined.map(({ entry }) => entry)).toEqual(["b", "a", "c"]);
    expect(combined[1]?.best.similarity).toBeCloseTo((0.85 + 0.9) / 2, 12);
    expect(combined[1]?.hits).toBe(3);
    expect(combined[1]?.seen.map((each) => [each.photograph, each.hit.similarity])).toEqual([
      [1, 0.9],
      [2, 0.8],
    ]);
    expect(combineSights(sights, 2)).toHaveLength(2);
  });

  it("is the photograph's own ranking when there is one", () => {
    const alone = combineSights(sights.slice(0, 1), 10);
    expect(alone.map(({ entry, best, hits }) => ({ entry, best, hits }))).toEqual(sights[0]?.ranked);
  });

  it("is the same when every photograph is given twice, and whatever their order", () => {
    const order = (given: readonly Sight[]) => combineSights(given, 10).map((each) => each.entry);
    const twice = sights.flatMap((each, i) => [each, { ...each, photograph: 10 + i }]);
    expect(order(twice)).toEqual(order(sights));
    expect(order([...sights].reverse())).toEqual(order(sights));
  });

  it("keeps a sure answer first beside a photograph that shows nothing", () => {
    // On one photograph the entry leads by more than the other photograph can tell entries apart.
    const nothing = { photograph: 2, ranked: [ranked("c", 0.83), ranked("b", 0.82), ranked("a", 0.8)] };
    const sure = { photograph: 1, ranked: [ranked("a", 0.95), ranked("b", 0.84), ranked("c", 0.83)] };
    expect(combineSights([sure, nothing], 10)[0]?.entry).toBe("a");
  });

  it("says which entries a photograph did not see that another saw", () => {
    const lacking = unseen([
      { photograph: 1, ranked: [ranked("a", 0.9), ranked("b", 0.8)] },
      { photograph: 2, ranked: [ranked("b", 0.9), ranked("c", 0.8)] },
    ]);
    expect([...lacking]).toEqual([
      [1, ["c"]],
      [2, ["a"]],
    ]);
  });
});
