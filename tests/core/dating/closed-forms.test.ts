import { describe, expect, it } from "vitest";
import { estimate } from "#core/dating/estimate";
import { MODELS, modelOf } from "#core/dating/event-model";
import { addLags, lagTable } from "#core/dating/lag";
import { chance, piece } from "./evidence.ts";

const FIFTY = { kind: "years", from: 1900, to: 1949 } as const;
const MADE = ["other", "made"] as const;

describe("one uniform window", () => {
  // With 0.8 it is true and spreads over its ten years; with 0.2 it says nothing and leaves fifty.
  const found = estimate([piece("a", MADE, "1920/1929", 0.8)], FIFTY);

  it("holds its reliability, and its part of what is left when it is false", () => {
    expect(chance(found, 1920, 1929)).toBeCloseTo(0.8 + 0.2 * (10 / 50), 12);
    expect(chance(found, 1905, 1905)).toBeCloseTo(0.2 / 50, 12);
  });

  it("has its median where 0.08 before it and 5 of its years at 0.084 make a half", () => {
    expect(found.median).toBeCloseTo(1925, 9);
  });

  it("holds a half in the six years about the median, months counted: 72 of them at 0.007", () => {
    const { ranges, spans, mass } = found.shortest[50];
    expect(ranges).toMatchObject([{ from: 1922, to: 1927 }]);
    // To the month 0.5 / 0.084 years are enough: 71.43 months, the last of them in part.
    expect(spans.map(({ begins, ends }) => ends - begins)).toEqual([expect.closeTo(0.5 / 0.084, 9)]);
    expect(mass).toBeCloseTo(6 * 0.084, 12);
  });

  it("tells log2(1/0.2) bits of what 0.84 in a fifth and 0.16 in four fifths come to", () => {
    const bits = 0.84 * Math.log2(0.084 / 0.02) + 0.16 * Math.log2(0.004 / 0.02);
    expect(found.weights.a).toBeCloseTo(bits, 12);
    expect(found.without.a).toMatchObject({
      interval95: { from: 1900, to: 1949 },
      shift: expect.closeTo(0, 9),
    });
  });
});

describe("two overlapping windows", () => {
  it("multiplies 0.9 * 50/20 + 0.1 where each holds, and 0.1 where not", () => {
    const found = estimate([piece("a", MADE, "1910/1929", 0.9), piece("b", MADE, "1920/1939", 0.9)], FIFTY);
    const [holds, fails] = [0.9 * (50 / 20) + 0.1, 0.1];
    const all = 10 * (holds ** 2 + 2 * holds * fails + 2 * fails ** 2);
    expect(chance(found, 1920, 1929)).toBeCloseTo((10 * holds ** 2) / all, 12);
    expect(chance(found, 1910, 1919)).toBeCloseTo((10 * holds * fails) / all, 12);
    expect(chance(found, 1940, 1949)).toBeCloseTo((10 * fails ** 2) / all, 12);
    expect(found.notBefore).toEqual({ day: "1920-01-01", evidenceIds: ["b"] });
    expect(found.notAfter).toEqual({ day: "1929-12-31", evidenceIds: ["a"] });
  });
});

describe("one false piece among three", () => {
  const found = estimate(
    [
      piece("a", MADE, "1920/1929", 0.9),
      piece("b", MADE, "1920/1929", 0.9),
      piece("c", MADE, "1940/1949", 0.9),
    ],
    FIFTY,
  );

  it("is outvoted, not averaged with", () => {
    const [holds, fails] = [0.9 * 5 + 0.1, 0.1];
    const twenties = holds ** 2 * fails;
    const all = twenties + fails ** 2 * holds + 3 * fails ** 3;
    expect(chance(found, 1920, 1929)).toBeCloseTo(twenties / all, 12);
    expect(chance(found, 1930, 1939)).toBeCloseTo(fails ** 3 / all, 12);
  });

  it("is named with each that it contradicts, and what nothing contradicts is nothing here", () => {
    expect(found.conflicts).toEqual([
      ["a", "c"],
      ["b", "c"],
    ]);
    expect(found).toMatchObject({ notBefore: null, notAfter: null });
    expect(found.undisputed).toEqual({ notBefore: null, notAfter: null });
  });
});

describe("soft edges", () => {
  it("lets a catalogue line be out by up to a year at either end: half as likely in the year before", () => {
    const found = estimate([piece("a", ["catalogue-line", "made"], "1920/1929", 0.999)], FIFTY);
    // Ten full years and two halves: E = 11/50.
    const full = 0.999 / (11 / 50) + 0.001;
    const half = (0.999 * 0.5) / (11 / 50) + 0.001;
    expect(chance(found, 1925, 1925)).toBeCloseTo(full / 50, 9);
    expect(chance(found, 1919, 1919)).toBeCloseTo(half / 50, 9);
    expect(chance(found, 1930, 1930)).toBeCloseTo(half / 50, 9);
    expect(chance(found, 1918, 1918)).toBeCloseTo(0.001 / 50, 9);
  });

  it("lets about a year be out by five", () => {
    const found = estimate([piece("a", MADE, "1920~", 0.999)], FIFTY);
    // 1920 in full, and five years on either side at 0.9, 0.7, 0.5, 0.3, 0.1 of it.
    const ratio = (chance(found, 1917, 1917) * 50 - 0.001) / (chance(found, 1920, 1920) * 50 - 0.001);
    expect(ratio).toBeCloseTo(0.5, 9);
    expect(found).toMatchObject({ notBefore: { day: "1915-01-01" }, notAfter: { day: "1925-12-31" } });
  });

  it("keeps a day within its month", () => {
    const found = estimate([piece("a", MADE, "1922-08-06", 0.999)], FIFTY);
    expect(chance(found, 1922, 1922)).toBeCloseTo(0.999 + 0.001 / 50, 9);
    // Half of it lies in half of that month.
    const [span] = found.shortest[50].spans;
    expect(span?.begins).toBeCloseTo(1922 + 7 / 12, 9);
    expect((span?.ends ?? 0) - (span?.begins ?? 0)).toBeCloseTo(0.5 / 12, 2);
    expect(found.notAfter?.day).toBe("1922-08-06");
  });
});

describe("lags", () => {
  it.each([
    ["gift", MODELS.given, (x: number) => 1 - 0.7 * Math.exp(-x / 2) - 0.3 * Math.exp(-x / 20)],
    ["number", MODELS.number, (x: number) => 1 - 0.5 * Math.exp(-x / 3) - 0.3 * Math.exp(-x / 12)],
    ["mark", MODELS.mark, (x: number) => 1 - 0.25 * Math.exp(-x / 2)],
  ])("of a %s are what their formula says, months and years on", (_, model, upTo) => {
    const lagUpTo = (month: number, soft: number) => {
      const one = new Float64Array(1);
      addLags(one, lagTable(model, 12), { start: month, direction: 1, soft, sign: 1 });
      return one[0];
    };
    for (const month of [0, 1, 11, 12, 60, 240, 600])
      expect(lagUpTo(month, 0)).toBeCloseTo(upTo((month + 0.5) / 12), 5);
    // Averaged over an end that may be out by a year: the integral over the year before.
    const year = Array.from({ length: 1000 }, (__, i) => upTo(4.0 + 0.5 / 12 - (i + 0.5) / 1000));
    expect(lagUpTo(48, 12)).toBeCloseTo(year.reduce((a, b) => a + b) / 1000, 4);
  });

  it("make a gift of a day bound from above, likeliest shortly before", () => {
    const found = estimate([piece("a", ["story", "given"], "1930-01-01", 0.999)], {
      kind: "years",
      from: 1880,
      to: 1949,
    });
    // A day is counted as its month.
    expect(chance(found, 1930, 1930)).toBeLessThan(0.02);
    expect(chance(found, 1931, 1949)).toBeCloseTo((0.001 * 19) / 70, 9);
    const [last = 0, before = 0] = [chance(found, 1929, 1929), chance(found, 1928, 1928)];
    const share = (x: number) => 0.7 * Math.exp(-x / 2) + 0.3 * Math.exp(-x / 20);
    // Of a gift within one month the chance is, to a month, that of lags between x and x + 1/12.
    const within = (from: number) => share(from + 1 / 24) - share(from + 1 + 1 / 24);
    expect(last / before).toBeCloseTo(within(0) / within(1), 1);
  });

  it("make a mark last on after its period while stock is used up: a quarter of it, with a mean of two years", () => {
    const found = estimate([piece("a", ["mark", "marked"], "1920/1929", 0.999)], FIFTY);
    const tail = chance(found, 1933, 1933) - 0.001 / 50;
    const next = chance(found, 1934, 1934) - 0.001 / 50;
    expect(next / tail).toBeCloseTo(Math.exp(-1 / 2), 6);
    expect(found.notAfter?.day).toBe("1929-12-31");
  });

  it("say nothing of the making where a repair is dated", () => {
    const found = estimate([piece("a", ["repair", "repaired"], "1920/1929", 0.999)], FIFTY);
    expect(new Set(found.posterior.map((p) => p.toFixed(12)))).toEqual(new Set(["0.020000000000"]));
    expect(found).toMatchObject({ notBefore: null, notAfter: null });
    expect(found.weights.a).toBeCloseTo(0, 12);
  });
});

describe("facts that depend on each other", () => {
  const once = estimate([piece("a", MADE, "1920/1929", 0.8)], FIFTY);

  it("count once when they say the same", () => {
    const twice = estimate(
      [
        piece("a", MADE, "1920/1929", 0.8, { group: "label" }),
        piece("b", MADE, "1920/1929", 0.8, { group: "label" }),
      ],
      FIFTY,
    );
    for (const year of [1905, 1925, 1945])
      expect(chance(twice, year, year)).toBeCloseTo(chance(once, year, year), 12);
    expect(twice.weights).toMatchObject({ a: expect.closeTo(0, 9), b: expect.closeTo(0, 9) });
  });

  it("narrow each other down, the surer first: 0.9 for twenty years, 0.6 of it for ten of them", () => {
    const found = estimate(
      [
        piece("a", MADE, "1910/1929", 0.9, { group: "label" }),
        piece("b", MADE, "1920/1939", 0.6, { group: "label" }),
      ],
      FIFTY,
    );
    expect(chance(found, 1920, 1929)).toBeCloseTo(0.6 + 0.3 * 0.5 + 0.1 * 0.2, 12);
    expect(chance(found, 1910, 1919)).toBeCloseTo(0.3 * 0.5 + 0.1 * 0.2, 12);
    expect(chance(found, 1930, 1939)).toBeCloseTo(0.1 * 0.2, 12);
  });

  it("leave nothing where they cannot both be true and are equally sure, and are named", () => {
    const found = estimate(
      [
        piece("a", MADE, "1910/1919", 0.9, { group: "label" }),
        piece("b", MADE, "1930/1939", 0.9, { group: "label" }),
      ],
      FIFTY,
    );
    expect(chance(found, 1910, 1919)).toBeCloseTo(0.2, 12);
    expect(found.conflicts).toEqual([["a", "b"]]);
  });
});

describe("a piece that may mean several periods", () => {
  const letter = piece("letter", ["hallmark", "marked"], "1876", 0.95, { or: ["1896", "1916"] });

  it("gives several ranges, and bounds that one of its periods begins and ends", () => {
    const found = estimate([letter], { kind: "years", from: 1850, to: 1949 });
    // Each of three years and a month on either side, half of which counts: 12/13 of a third of 0.95 within the year.
    for (const year of [1876, 1896, 1916])
      expect(chance(found, year, year)).toBeCloseTo((0.95 * (12 / 13)) / 3 + 0.05 / 100, 9);
    const within = (year: number) =>
      found.shortest[80].ranges.some(({ from, to }) => from <= year && year <= to);
    expect([1876, 1886, 1896, 1906, 1916].filter(within)).toEqual([1876, 1896, 1916]);
    expect(found).toMatchObject({ notBefore: { day: "1876-01-01" }, notAfter: { day: "1916-12-31" } });
  });

  it("is decided by another: not before 1880 leaves 1896 as the first, by the letter", () => {
    const found = estimate([letter, piece("sign", MADE, "1880/1910", 0.95)], {
      kind: "years",
      from: 1850,
      to: 1949,
    });
    expect(found.notBefore).toEqual({ day: "1896-01-01", evidenceIds: ["letter"] });
    expect(found.notAfter).toEqual({ day: "1896-12-31", evidenceIds: ["letter"] });
  });

  it("contradicts two others together that it contradicts neither of", () => {
    const found = estimate(
      [letter, piece("later", MADE, "1900/..", 0.95), piece("sooner", MADE, "../1910", 0.95)],
      { kind: "years", from: 1850, to: 1949 },
    );
    expect(found.conflicts).toEqual([["later", "letter", "sooner"]]);
  });
});

describe("what an event says", () => {
  it("goes by the kind for what was done in the making, and by the event for what came after", () => {
    expect(modelOf({ kind: "number", event: "marked" }).id).toBe("number");
    expect(modelOf({ kind: "wording", event: "sold" }).id).toBe("sold");
    expect(modelOf({ kind: "photograph", event: "made" }).id).toBe("made");
  });

  it("takes a lasting state by its beginning: who owned it from 1930 to 1950 had it in 1930", () => {
    const found = estimate([piece("a", ["story", "owned"], "1930-05/1950", 0.9)], FIFTY);
    expect(found.notAfter?.day).toBe("1930-05-31");
  });
});

describe("a prior", () => {
  it("of a maker's years holds as often as it is said to", () => {
    const found = estimate([], { kind: "maker", from: 1920, to: 1929, reliability: 0.9, thisYear: 1930 });
    expect(found.grid).toEqual({ from: 1910, to: 1930 });
    expect(chance(found, 1920, 1929)).toBeCloseTo(0.9 + 0.1 * (10 / 21), 12);
  });

  it("of the widest window spans what is stated with ten years on either side, and to this year when open", () => {
    const line = piece("a", MADE, "1914/1927", 0.9);
    expect(estimate([line], { kind: "widest", thisYear: 2026 }).grid).toEqual({ from: 1904, to: 1937 });
    const open = piece("b", MADE, "1891/..", 0.9);
    expect(estimate([open, line], { kind: "widest", thisYear: 2026 }).grid).toEqual({ from: 1881, to: 2026 });
    const gift = piece("c", ["story", "given"], "1921", 0.9);
    expect(estimate([gift], { kind: "widest", thisYear: 2026 }).grid).toEqual({ from: 1821, to: 1931 });
  });

  it("that no window meets leaves the piece outside, by name", () => {
    const found = estimate([piece("a", MADE, "1850/1859", 0.9)], FIFTY);
    expect(found.outside).toEqual(["a"]);
    expect(chance(found, 1900, 1909)).toBeCloseTo(0.2, 12);
  });
});
