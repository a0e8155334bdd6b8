import { describe, expect, it } from "vitest";
import { CIRCA_POLICY, widened } from "#core/dates/circa-policy";
import { covers } from "#core/dates/interval";
import { parseInterval } from "#core/dates/parse";
import { readDate } from "#core/dates/read-date";

const read = (text: string) => {
  const date = readDate(text);
  if (!date.ok) throw new Error(`${text}: ${date.error.rule}`);
  return date.value.interval;
};

describe("what about spans", () => {
  it.each([
    ["1905", 1905, 1906, 1905, 1906],
    ["about 1905", 1905, 1906, 1900, 1911],
    ["c. 1920s", 1920, 1930, 1910, 1940],
    ["1871/1890~", 1871, 1891, 1871, 1896],
    ["perhaps about 1905", 1905, 1906, 1895, 1916],
    ["2004-06-~11", 2004 + 162 / 366, 2004 + 163 / 366, 2004 + 162 / 366 - 1 / 12, 2004 + 163 / 366 + 1 / 12],
  ])("%s: %f to %f, softly %f to %f", (text, from, to, softFrom, softTo) => {
    const edges = widened(read(text));
    expect([edges.from, edges.to, edges.softFrom, edges.softTo].map((n) => n?.toFixed(6))).toEqual(
      [from, to, softFrom, softTo].map((n) => n.toFixed(6)),
    );
  });

  it("leaves open ends open, and follows the policy given", () => {
    expect(widened(read("before about 1914"))).toEqual({
      from: null,
      to: 1915,
      softFrom: null,
      softTo: 1920,
    });
    const strict = { ...CIRCA_POLICY, about: { ...CIRCA_POLICY.about, year: 2 } };
    expect(widened(read("about 1905"), strict)).toMatchObject({ softFrom: 1903, softTo: 1908 });
  });
});

/** Worked examples of Cataloging Cultural Objects (earliest and latest dates beside the display date). */
describe("museum dates", () => {
  // The second example writes 1220: it counts the century to 1200, EDTF to 1199.
  it.each([
    ["ca. 1610", 1605, 1615],
    ["probably late 12th century", 1150, 1219],
  ])("%s reaches from %i to %i", (text, earliest, latest) => {
    const { softFrom, softTo } = widened(read(text));
    expect([softFrom, softTo]).toEqual([earliest, latest + 1]);
  });

  it("12-9 BCE are the years the example writes -0012 and -0009, of which EDTF, with a year 0, makes -0011 and -0008", () => {
    expect(read("12-9 BCE")).toMatchObject({ earliest: -11, latest: -8 });
  });

  it("the 13th century is 1200 to 1299, as EDTF writes it; the house that counts 1201 to 1300 writes that", () => {
    expect(read("13th century")).toMatchObject({ earliest: 1200, latest: 1299 });
    expect(read("1201-1300")).toMatchObject({ earliest: 1201, latest: 1300 });
  });
});

describe("covers", () => {
  it.each([
    ["1900/1910", "1905", true],
    ["1900/1910", "1905/1911", false],
    ["1911", "1911-03-12", true],
    ["1911-03", "1911", false],
    ["../1914", "1900/1914-12-31", true],
    ["../1914", "1900/..", false],
    ["../..", "1900/..", true],
    ["1900/1910", "../1905", false],
  ])("%s covers %s: %s", (outer, inner, held) => expect(covers(read(outer), read(inner))).toBe(held));
});

it("an interval knows its first and last day", () => {
  const parsed = parseInterval("../1922-08");
  expect(parsed.ok && [parsed.value.firstDay, parsed.value.lastDay]).toEqual([null, "1922-08-31"]);
});
