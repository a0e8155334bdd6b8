import { describe, expect, it } from "vitest";
import { overlaps } from "#core/dates/interval";
import { parseInterval, parsePeriod } from "#core/dates/parse";
import examples from "../../fixtures/edtf/examples.json" with { type: "json" };

const read = (text: string) => {
  const parsed = parseInterval(text);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.error.rule}`);
  return parsed.value;
};

/** Source of the examples: see the fixture. Open and unknown ends carry no single pair of years. */
const withYears = examples.examples.filter(
  (e) => /^-?\d{4}/.test(e.min ?? "") && /^-?\d{4}/.test(e.max ?? ""),
);
/** Times of day and years of more than four digits are no periods of use: refused, in words. */
const isBeyond = (e: { string: string }) => /[TYE]/.test(e.string);
const dated = withYears.filter((e) => !isBeyond(e));
/**
 * Refused by the validators named in the fixture, read by the parser: surrounding spaces are somebody's typing, the
 * others are at worst an end named less precisely than its start.
 */
const LENIENT = new Set([
  " 1863-03-29",
  "1863-03-29 ",
  "0000-01-03/0000-01",
  "0000-02/0000",
  "2004-06-11%/2004-%06",
  "2004-06-11%/2004-06~",
  "Y-61000/-2000",
]);
const yearOf = (iso: string) => Number.parseInt(/^-?\d+/.exec(iso)?.[0] ?? "", 10);

describe("an EDTF date or interval", () => {
  it("has examples to be checked with", () => expect(dated.length).toBeGreaterThan(15));

  it.each(dated)("$string ($feature) spans the years the specification gives it", ({ string, min, max }) => {
    const interval = read(string);
    expect([interval.earliest, interval.latest]).toEqual([yearOf(min ?? ""), yearOf(max ?? "")]);
  });

  it.each(examples.invalid.strings.filter((s) => !LENIENT.has(s)))("%s is refused", (string) => {
    expect(parseInterval(string).ok).toBe(false);
  });

  it.each(examples.examples.filter(isBeyond))("$string ($feature) is no period of use", ({ string }) => {
    expect(parseInterval(string).ok).toBe(true);
    expect(parsePeriod(string)).toMatchObject({ error: { rule: "edtf-date-or-interval" } });
  });

  it("names the field, the rule and what was received", () => {
    expect(parseInterval("the nineties", "period")).toEqual({
      ok: false,
      error: { field: "period", rule: "edtf", received: "the nineties" },
    });
    expect(parseInterval("1890/1871")).toMatchObject({ error: { rule: "edtf-order" } });
  });

  it("keeps what is open, about and uncertain at each end", () => {
    const { start, end } = read("1871~/1890?");
    expect(start).toMatchObject({ year: 1871, open: false, approximate: true, uncertain: false });
    expect(end).toMatchObject({ year: 1890, open: false, approximate: false, uncertain: true });
    expect(read("1902/..")).toMatchObject({ earliest: 1902, latest: null, end: { open: true } });
    expect(read("../1920")).toMatchObject({ earliest: null, latest: 1920, start: { open: true } });
  });
});

describe("two periods", () => {
  it.each([
    ["1871/1890", "1890/1900", true],
    ["1871/1889", "1890/1900", false],
    ["1902/..", "1850/1901", false],
    ["1902/..", "1950", true],
    ["../1920", "1920/..", true],
  ])("%s and %s share a year: %s", (a, b, shared) => {
    expect(overlaps(read(a), read(b))).toBe(shared);
    expect(overlaps(read(b), read(a))).toBe(shared);
  });
});

describe("a period written the ordinary way", () => {
  it.each([
    ["1890-1900", "1890/1900"],
    ["1890–95", "1890/1895"],
    ["1890s", "189X"],
    ["c.1890", "1890~"],
    ["about 1890", "1890~"],
    ["19th century", "18XX"],
    ["before 1914", "../1914"],
    ["from 1902", "1902/.."],
  ])("%s is refused, and %s is offered, which can be read", (text, suggestion) => {
    expect(parseInterval(text)).toMatchObject({ ok: false, error: { params: { suggestion } } });
    expect(parseInterval(suggestion).ok).toBe(true);
  });
});

describe("a date with digits not known", () => {
  it.each([
    ["XXXX-02-29", "0000-02-29", "9996-02-29"],
    ["19X0-02-29", "1920-02-29", "1980-02-29"],
    ["XX00-02-29", "0000-02-29", "9600-02-29"],
    ["190X-1X-31", "1900-10-31", "1909-12-31"],
    ["-01XX-02-29", "-0196-02-29", "-0104-02-29"],
  ])("%s is from %s to %s", (edtf, first, last) => {
    expect(read(edtf)).toMatchObject({ firstDay: first, lastDay: last });
  });

  it.each(["XXX1-02-29", "XXXX-02-3X", "1911-1X-32"])(
    "%s is no day of any year, which is found soon",
    (edtf) => {
      const start = performance.now();
      for (let i = 0; i < 200; i++) expect(parseInterval(edtf).ok).toBe(false);
      expect(performance.now() - start).toBeLessThan(1000);
    },
  );
});
