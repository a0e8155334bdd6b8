import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { againstMaker, type MakersEntry, rankMakers } from "#core/similarity/makers-of-marks";

const entry = (maker: string, mark: number, slug: string, score: number, comesNear = true): MakersEntry => ({
  maker,
  mark,
  entry: slug,
  score,
  comesNear,
});

describe("makers that use several marks of one object", () => {
  it("are those with an entry near each, and stand before one that is only very like the first", () => {
    const found = rankMakers(
      [
        entry("one-mark-only", 1, "x1", 6),
        entry("both", 1, "b1", 1),
        entry("both", 2, "b2", 2),
        entry("far", 1, "f1", -2, false),
        entry("far", 2, "f2", 3),
      ],
      2,
      5,
    );
    expect(found.map(({ maker }) => maker)).toEqual(["both"]);
    expect(found[0]?.answers.map(({ mark, entry: slug }) => [mark, slug])).toEqual([
      [1, "b1"],
      [2, "b2"],
    ]);
    expect(found[0]?.score).toBe(3);
  });

  it("need another entry for each mark: one entry like both is one mark photographed twice", () => {
    expect(rankMakers([entry("m", 1, "same", 3), entry("m", 2, "same", 2)], 2, 5)).toEqual([]);
    const [found] = rankMakers(
      [entry("m", 1, "same", 3), entry("m", 2, "same", 2), entry("m", 2, "other", 1)],
      2,
      5,
    );
    expect(found?.answers.map(({ entry: slug }) => slug)).toEqual(["same", "other"]);
  });

  it("lose by each mark that none of their entries comes near", () => {
    const two = [entry("two", 1, "a", 3), entry("two", 2, "b", 3)];
    const three = [entry("three", 1, "c", 1.5), entry("three", 2, "d", 1.5), entry("three", 3, "e", 1.5)];
    expect(rankMakers([...two, ...three], 3, 5).map(({ maker }) => maker)).toEqual(["three", "two"]);
  });

  it("stand in the order of their names when nothing tells them apart, and are no more than asked for", () => {
    const given = ["c", "a", "b"].flatMap((maker) => [
      entry(maker, 1, `${maker}1`, 1),
      entry(maker, 2, `${maker}2`, 1),
    ]);
    expect(rankMakers(given, 2, 2).map(({ maker }) => maker)).toEqual(["a", "b"]);
    expect(rankMakers([...given].reverse(), 2, 2)).toEqual(rankMakers(given, 2, 2));
  });
});

describe("what speaks against a maker of several marks", () => {
  const period = (edtf: string) => {
    const parsed = parseInterval(edtf);
    if (!parsed.ok) throw new Error(edtf);
    return parsed.value;
  };
  const first = (mark: number, maker: string | null) => ({
    mark,
    entry: { slug: `first-${mark}`, title: `First ${mark}`, maker },
  });

  it("is a mark that nothing of it comes near, and one to which another maker's comes nearer", () => {
    const answers = [
      { mark: 1, entry: { period: null } },
      { mark: 2, entry: { period: null } },
    ];
    expect(againstMaker("m", answers, [first(1, "m"), first(2, "other"), first(3, null)])).toEqual([
      { why: "other-nearer", mark: 2, slug: "first-2", title: "First 2" },
      { why: "nothing-near", mark: 3 },
    ]);
  });

  it("is that its marks were not in use in the same years; an unknown period says nothing", () => {
    const answers = (a: string | null, b: string) => [
      { mark: 1, entry: { period: a === null ? null : period(a) } },
      { mark: 2, entry: { period: period(b) } },
    ];
    const firsts = [first(1, "m"), first(2, "m")];
    expect(againstMaker("m", answers("1850/1870", "1890/1910"), firsts)).toEqual([
      { why: "periods-apart", marks: [1, 2] },
    ]);
    expect(againstMaker("m", answers("1850/1890", "1890/1910"), firsts)).toEqual([]);
    expect(againstMaker("m", answers(null, "1890/1910"), firsts)).toEqual([]);
  });
});
