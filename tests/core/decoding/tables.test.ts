import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { US_DESIGN_PATENTS, US_PATENTS, US_TRADE_MARKS } from "#core/decoding/decode-number";
import { CYCLES } from "#core/decoding/hallmark-table";
import { WORDING_RULES } from "#core/decoding/label-wording";
import { FAMILIES, FEATURES } from "#core/decoding/making";
import type { YearRow } from "#core/decoding/number-table";
import { UK_DESIGNS } from "#core/decoding/registered-design";

const folder = new URL("../../../app/_core/decoding/tables/", import.meta.url);
type Row = Readonly<Record<string, string | number | boolean | object | undefined>>;
const tables = readdirSync(folder).map((name) => {
  const text = readFileSync(new URL(name, folder), "utf8");
  return { name, text, rows: JSON.parse(text) as readonly Row[] };
});
const sourced = tables.filter(({ name }) => name !== "reasons.json");

/** What is wrong with the order of a table of years: a year or a number that doesn't come after the one before. */
function outOfOrder(rows: readonly Pick<YearRow, "year" | "first">[]): readonly number[] {
  return rows.flatMap((row, i) => {
    const before = rows[i - 1];
    return before && (row.year <= before.year || row.first <= before.first) ? [row.year] : [];
  });
}

/** Letters that stand for no year, or for two, of a run of years. */
function notOneToOne(letters: readonly (readonly [string, number])[]): readonly string[] {
  const twice = (values: readonly (string | number)[]) =>
    values.filter((each, i) => values.indexOf(each) !== i).map(String);
  return [...twice(letters.map(([letter]) => letter)), ...twice(letters.map(([, year]) => year)).map(String)];
}

describe("every table", () => {
  it.each(tables)("$name has one row a line", ({ text, rows }) => {
    expect(text.trim().split("\n")).toHaveLength(rows.length + 2);
  });

  it.each(sourced)("$name has a source and a status in every row", ({ rows }) => {
    const faulty = rows.filter(({ source, status, basis }) => {
      const known = ["published", "from-memory", "common-practice"].includes(String(basis));
      return !known || String(source ?? "") === "" || String(status ?? "") === "";
    });
    expect(faulty).toEqual([]);
    expect(rows.length).toBeGreaterThan(5);
  });

  it.each(sourced)("$name calls nothing published that was only remembered", ({ rows }) => {
    const faulty = rows.filter(
      ({ status, basis }) => basis === "published" && /memory|^partly verified$/.test(String(status)),
    );
    // The years in which offices closed were read; their marks are remembered.
    expect(faulty.filter(({ kind }) => kind !== "office")).toEqual([]);
  });

  it.each(sourced)("$name gives its periods in EDTF, with the beginning first", ({ rows }) => {
    const periods = rows.flatMap(({ edtf }) => (edtf === undefined ? [] : [String(edtf)]));
    const unread = periods.filter((edtf) => !parseInterval(edtf.replace("{1}", "1900")).ok);
    expect(unread).toEqual([]);
  });

  it("says nothing of how it was collected in place of a source", () => {
    const faulty = sourced.flatMap(({ rows }) =>
      rows.filter(({ source }) => /\bstored\b|excerpt/i.test(String(source))),
    );
    expect(faulty).toEqual([]);
  });
});

describe("tables of first numbers", () => {
  it.each([
    ["us-patents", US_PATENTS.rows, 187],
    ["us-design-patents", US_DESIGN_PATENTS.rows, 169],
    ["us-trade-marks", US_TRADE_MARKS.rows, 74],
    ["uk-registered-designs", UK_DESIGNS, 82],
  ])("%s rises without a gap", (_, rows, count) => {
    expect(rows).toHaveLength(count);
    expect(outOfOrder(rows)).toEqual([]);
    const years = rows.filter((row) => !row.milestone).map(({ year }) => year);
    expect(years).toEqual(years.map((_, i) => (years[0] ?? 0) + i));
  });

  it("would be found out with a number that falls", () => {
    expect(
      outOfOrder([
        { year: 1900, first: 10 },
        { year: 1901, first: 9 },
      ]),
    ).toEqual([1901]);
  });

  it("has the patents granted in 1838 and 1839, which the misprint 1,106 has not", () => {
    const first = (year: number) => US_PATENTS.rows.find((row) => row.year === year)?.first ?? 0;
    const granted = (of1839: number) => [of1839 - first(1838), first(1840) - of1839];
    expect(granted(first(1839))).toEqual([515, 404]);
    expect(US_PATENTS.rows.find(({ year }) => year === 1839)?.misprinted).toEqual([1106]);
    expect(granted(1106)).not.toEqual([515, 404]);
  });

  it("fits the patents granted in 1926 with 1,612,790 and not with 1,612,700", () => {
    const first = (year: number) => US_PATENTS.rows.find((row) => row.year === year)?.first ?? 0;
    expect(Math.abs(first(1927) - first(1926) - 44_733)).toBeLessThan(50);
    expect(Math.abs(1_612_700 - first(1926) - 44_733)).toBeGreaterThan(50);
  });
});

describe("the diamond's letters", () => {
  const rows = tables.find(({ name }) => name === "registration-diamond.json")?.rows ?? [];
  const letters = (series: string) =>
    rows
      .filter((row) => row.kind === "year letter" && row.series === series)
      .map((row) => [String(row.key), Number(row.value)] as const);
  const first = letters("1842-1867");
  const second = letters("1868-1883");

  it("stand for one year each, and every year has one", () => {
    expect(notOneToOne(first)).toEqual([]);
    expect(notOneToOne(second)).toEqual([]);
    expect(new Set(first.map(([letter]) => letter)).size).toBe(26);
    expect(first.map(([, year]) => year)).toEqual(Array.from({ length: 26 }, (_, i) => 1842 + i));
    expect(second.map(([, year]) => year)).toEqual(Array.from({ length: 16 }, (_, i) => 1868 + i));
  });

  it("repeat in the same order from 1868 on", () => {
    expect(second.map(([letter]) => letter)).toEqual(first.slice(0, 16).map(([letter]) => letter));
  });

  it.each([
    ["H for 1868", second, "H", 1868],
    ["G for 1853", first, "G", 1853],
  ])("would be found out with the misprint %s", (_, correct, letter, year) => {
    const misprinted = correct.map(([key, value]) => [key, key === letter ? year : value] as const);
    expect(notOneToOne(misprinted)).toEqual([String(year)]);
  });

  it("have twelve for the months and thirteen classes", () => {
    const months = rows.filter(({ kind }) => kind === "month letter");
    expect(notOneToOne(months.map(({ key, value }) => [String(key), Number(value)] as const))).toEqual([]);
    expect(months.map(({ value }) => value)).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
    expect(rows.filter(({ kind }) => kind === "class")).toHaveLength(13);
  });
});

describe("date letters", () => {
  it("have a letter for each year of their cycle", () => {
    // A new series of 2025 has begun with its first letter alone.
    const faulty = CYCLES.filter(({ first, last, letters }) => letters.length !== last - first + 1);
    expect(faulty.map(({ office, first }) => `${office} ${first}`)).toEqual([]);
    expect(CYCLES.filter(({ letters }) => new Set(letters).size !== letters.length)).toEqual([]);
  });

  it.each(["London", "Birmingham", "Sheffield", "Edinburgh"])("follow on one another in %s", (office) => {
    const cycles = CYCLES.filter((cycle) => cycle.office === office);
    for (const [i, cycle] of cycles.slice(1).entries()) {
      const before = cycles[i];
      // 1696 is where the letters of 1697 are counted from.
      expect(cycle.first).toBe(cycle.first === 1696 ? before?.last : (before?.last ?? 0) + 1);
    }
  });
});

describe("rules and features", () => {
  it("have names of their own", () => {
    for (const ids of [WORDING_RULES.map(({ id }) => id), FEATURES.map(({ id }) => id)])
      expect(new Set(ids).size).toBe(ids.length);
  });

  it("belong to a family that is shown", () => {
    expect(FEATURES.filter(({ family }) => !FAMILIES.includes(family))).toEqual([]);
    expect(FAMILIES.filter((family) => !FEATURES.some((each) => each.family === family))).toEqual([]);
  });

  it("have an example or a sign each, and a date unless they are only context", () => {
    const mute = WORDING_RULES.filter(({ examples, sign }) => examples.length === 0 && sign === undefined);
    expect(mute).toEqual([]);
    const dated = WORDING_RULES.filter(
      ({ edtf, strength }) => (edtf === undefined) !== (strength === "context"),
    );
    expect(dated.map(({ id }) => id)).toEqual([]);
  });
});
