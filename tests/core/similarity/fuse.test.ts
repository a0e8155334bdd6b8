import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Knowledge, NOTHING_KNOWN } from "#core/look-ups/knowledge";
import { EVIDENCE } from "#core/similarity/evidence";
import { type EntryFacts, findingsOf } from "#core/similarity/findings";
import { type Candidate, fuse, LAID_OPEN, noneOfFused } from "#core/similarity/fuse";
import { rankEntries } from "#core/similarity/rank";

const at = { veryClose: 0.92, close: 0.888, some: 0.858, noneBelow: 0.873 };
const facts: EntryFacts = {
  words: "VOSS",
  sizeMm: null,
  technique: "stamped",
  material: "pewter",
  kind: "mark",
};

/** A candidate by likeness and by what its entry records. */
const candidate = (
  entry: string,
  similarity: number | null,
  known: Partial<Knowledge> = {},
  recorded: Partial<EntryFacts> = {},
): Candidate => {
  const best = { entry, photographId: `${entry}-1`, similarity: similarity ?? 0, turn: 0 };
  return {
    entry,
    ranked: similarity === null ? null : { entry, best, hits: 1 },
    foundBy: "photograph",
    findings: findingsOf({ ...NOTHING_KNOWN, ...known }, { ...facts, ...recorded }),
  };
};
const order = (candidates: readonly Candidate[], limit = 24) =>
  fuse(candidates, at, limit).map(({ entry }) => entry);

describe("likeness and what is known besides", () => {
  it("given two photographs much alike, when the letters agree with the second, then it comes first", () => {
    const known = { letters: "VOSS" };
    expect(
      order([candidate("a", 0.9, known, { words: "HESK" }), candidate("b", 0.885, known, { words: "VOSS" })]),
    ).toEqual(["b", "a"]);
  });

  it("given a very close photograph, when everything speaks against it, then it is lowered to evens and no further", () => {
    const known = { letters: "VOSS", technique: "printed", material: "clay", kind: "label" } as const;
    const [only] = fuse([candidate("a", at.veryClose, known, { words: "HESK" })], at, 24);
    expect(only?.score).toBeCloseTo(Math.log(3) * (0.047 / 0.015) + EVIDENCE.mostAgainst, 9);
    expect(only?.score).toBeGreaterThan(0);
  });

  it("given a strong photograph of the wrong material, when many others fit better, then it is still laid open", () => {
    const known = { letters: "VOSS", material: "pewter" };
    const others = Array.from({ length: 30 }, (_, k) => candidate(`fits-${k}`, 0.88, known));
    const strong = candidate("strong", 0.889, known, { words: "HESK", material: "stoneware" });
    expect(order([...others, strong]).slice(0, LAID_OPEN)).toContain("strong");
  });

  it("given an exact reading of a mark unlike the photograph, when many are more alike, then it is laid open too", () => {
    const known = { letters: "VOSS" };
    const others = Array.from({ length: 30 }, (_, k) => candidate(`near-${k}`, 0.93, known, { words: "" }));
    expect(order([...others, candidate("read", 0.5, known)]).slice(0, LAID_OPEN)).toContain("read");
  });

  it("given a photograph unlike any, when four letters agree, then that entry comes before the merely little alike", () => {
    const known = { letters: "VOSS" };
    expect(order([candidate("a", 0.84, known, { words: "" }), candidate("b", 0.4, known)])).toEqual([
      "b",
      "a",
    ]);
  });

  it("given an entry without a photograph, when its letters agree, then it is listed before unlike ones", () => {
    const known = { letters: "VOSS" };
    expect(order([candidate("a", 0.86, known, { words: "HESK" }), candidate("b", null, known)])).toEqual([
      "b",
      "a",
    ]);
  });

  const drawn = fc.uniqueArray(
    fc.record({
      entry: fc.integer({ min: 0, max: 40 }).map((n) => `e${n}`),
      similarity: fc.option(fc.constantFrom(0.5, 0.86, 0.87, 0.889, 0.9, 0.95)),
      words: fc.constantFrom("", "VOSS", "VOSS BROTHERS", "HESK"),
      material: fc.constantFrom("", "pewter", "stoneware"),
    }),
    { selector: (each) => each.entry, maxLength: 40 },
  );
  const known = { letters: "VOSS", material: "pewter" };

  it("does not depend on the order of the candidates", () => {
    fc.assert(
      fc.property(drawn, fc.infiniteStream(fc.integer()), (all, keys) => {
        const given = all.map(({ entry, similarity, ...recorded }) =>
          candidate(entry, similarity, known, recorded),
        );
        const shuffled = given
          .map((each) => ({ each, key: keys.next().value ?? 0 }))
          .sort((x, y) => x.key - y.key)
          .map(({ each }) => each);
        expect(fuse(shuffled, at, 24)).toEqual(fuse(given, at, 24));
      }),
    );
  });

  it("changes nothing when nothing is known: the order is that of the photographs", () => {
    const hits = fc.array(
      fc.record({
        entry: fc.constantFrom(..."abcdefghijkl"),
        photographId: fc.constantFrom("1", "2", "3"),
        similarity: fc.constantFrom(0.4, 0.86, 0.89, 0.93),
        turn: fc.constantFrom(0, 30),
      }),
    );
    fc.assert(
      fc.property(hits, fc.integer({ min: 1, max: 24 }), (given, limit) => {
        const all = rankEntries(given, 200);
        const candidates = all.map(
          (ranked): Candidate => ({ entry: ranked.entry, ranked, foundBy: "photograph", findings: [] }),
        );
        expect(fuse(candidates, at, limit).map(({ ranked }) => ranked)).toEqual(rankEntries(given, limit));
      }),
    );
  });

  it("never takes the strongest photographs out of sight, whatever is known", () => {
    fc.assert(
      fc.property(drawn, (all) => {
        const given = all.map(({ entry, similarity, ...recorded }) =>
          candidate(entry, similarity, known, recorded),
        );
        const best = Math.max(...all.map(({ similarity }) => similarity ?? 0));
        const open = fuse(given, at, 24).slice(0, LAID_OPEN);
        if (best >= at.close) expect(open.map((each) => each.ranked?.best.similarity)).toContain(best);
      }),
    );
  });

  it("lists no entry twice and no more than asked for", () => {
    fc.assert(
      fc.property(drawn, fc.integer({ min: 1, max: 24 }), (all, limit) => {
        const given = all.map(({ entry, similarity, ...recorded }) =>
          candidate(entry, similarity, known, recorded),
        );
        const listed = order(given, limit);
        expect(new Set(listed).size).toBe(listed.length);
        expect(listed).toHaveLength(Math.min(limit, given.length));
      }),
    );
  });
});

describe("none of these", () => {
  const none = (candidates: readonly Candidate[]) => noneOfFused(fuse(candidates, at, 24), at);

  it("is said below the model's limit, and when there was nothing to compare with", () => {
    expect([none([candidate("a", 0.8729)]), none([candidate("a", 0.873)]), none([])]).toEqual([
      true,
      false,
      true,
    ]);
  });

  it("is taken back by exact letters, not by what many marks share", () => {
    expect(none([candidate("a", 0.86, { letters: "VOSS" })])).toBe(false);
    expect(none([candidate("a", 0.86, { technique: "stamped", material: "pewter", kind: "mark" })])).toBe(
      true,
    );
  });

  it("is not said of a likely mark because something speaks against it", () => {
    expect(none([candidate("a", 0.88, { letters: "HESK", material: "clay" })])).toBe(false);
  });
});
