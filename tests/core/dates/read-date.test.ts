import { describe, expect, it } from "vitest";
import { readDate } from "#core/dates/read-date";
import { easterSunday } from "#core/dates/words/easter";

const read = (text: string) => {
  const date = readDate(text);
  return date.ok ? date.value : date.error.rule;
};

const WRITTEN: readonly (readonly [text: string, edtf: string])[] = [
  ["about 1905", "1905~"],
  ["c. 1905-10", "1905~/1910~"],
  ["c1905", "1905~"],
  ["ca 1905", "1905~"],
  ["c. 1871–c. 1890", "1871~/1890~"],
  ["1871 to about 1890", "1871/1890~"],
  ["c. 1900?", "1900%"],
  ["1895 (?)", "1895?"],
  ["probably 1890s", "189X?"],
  ["before 1914", "../1914"],
  ["pre-1914", "../1914"],
  ["before the 1920s", "../1920"],
  ["after the 1920s", "1929/.."],
  ["in or before 1900", "../1900"],
  ["not after 1907", "../1907"],
  ["no later than August 1922", "../1922-08"],
  ["until about 1914", "../1914~"],
  ["1890 or earlier", "../1890"],
  ["1902 onwards", "1902/.."],
  ["1902+", "1902/.."],
  ["after 1902", "1902/.."],
  ["between 1901 and 1910", "1901/1910"],
  ["from 1901 to 1910", "1901/1910"],
  ["1905-7", "1905/1907"],
  ["1890/91", "1890/1891"],
  ["1880s-90s", "188X/189X"],
  ["12-9 BCE", "-0011/-0008"],
  ["A.D. 1850", "1850"],
  ["1920s", "192X"],
  ["early 1920s", "1920~/1923~"],
  ["mid-1920s", "1923~/1926~"],
  ["19th century", "18XX"],
  ["C19", "18XX"],
  ["nineteenth century", "18XX"],
  ["late 19th century", "187X~/189X~"],
  ["mid-19th century", "183X~/186X~"],
  ["early 19th c.", "180X~/182X~"],
  ["18th-19th century", "17XX/18XX"],
  ["late 18th to early 19th century", "177X~/182X~"],
  ["third quarter of the 18th century", "1750/1774"],
  ["first half of the 19th century", "1800/1849"],
  ["last third of the 19th century", "1867/1899"],
  ["turn of the 20th century", "1895~/1904~"],
  ["August 1922", "1922-08"],
  ["1911 May", "1911-05"],
  ["early August 1922", "1922-08-01/1922-08-10"],
  ["March to August 1922", "1922-03/1922-08"],
  ["12 March 1911", "1911-03-12"],
  ["March 12, 1911", "1911-03-12"],
  ["12th of March, 1911", "1911-03-12"],
  ["12-14 March 1911", "1911-03-12/1911-03-14"],
  ["1911-3-12", "1911-03-12"],
  ["12.3.1911", "1911-03-12"],
  ["25/12/1911", "1911-12-25"],
  ["3/12/1911", "[1911-03-12,1911-12-03]"],
  ["summer 1908", "1908-22"],
  ["winter 1908/09", "1908-24"],
  ["second quarter of 2001", "2001-34"],
  ["Michaelmas 1911", "1911-09-29"],
  ["Lady Day 1850", "1850-03-25"],
  ["Easter 1921", "1921-03-27"],
  ["Good Friday 1916", "1916-04-21"],
  ["Whit Monday 1921", "1921-05-16"],
  ["1890 or 1891", "[1890,1891]"],
  ["1890, 1891 or 1895", "[1890,1891,1895]"],
  ["1890 and 1895", "{1890,1895}"],
  ["[1667,1668, 1670..1672]", "[1667,1668,1670..1672]"],
];

describe("a date as people write it", () => {
  it.each(WRITTEN)("%s is understood as %s", (text, edtf) => {
    expect(read(text)).toMatchObject({ interval: { edtf }, understood: "words" });
  });

  it.each([
    "n.d.",
    "the nineties",
    "31 June 1911",
    "long ago",
    "Easter 1700",
    "1911 to 1908",
    "x".repeat(500),
  ])("%s is refused, not guessed", (text) => expect(typeof read(text)).toBe("string"));

  it("is EDTF first, and what else it may be is said", () => {
    expect(read("1905-10")).toMatchObject({
      interval: { edtf: "1905-10" },
      understood: "edtf",
      orElse: "1905/1910",
    });
    expect(read("1900s")).toMatchObject({ interval: { edtf: "190X" }, orElse: "19XX" });
    expect(read("1905/1910")).toMatchObject({ understood: "edtf", orElse: null });
  });
});

describe("Easter Sunday", () => {
  /** As printed in tables of the Gregorian calendar; 1818 and 1943 are the earliest and the latest it can be. */
  it.each([
    [1761, 3, 22],
    [1818, 3, 22],
    [1886, 4, 25],
    [1916, 4, 23],
    [1921, 3, 27],
    [1943, 4, 25],
    [1954, 4, 18],
    [1961, 4, 2],
    [2000, 4, 23],
    [2038, 4, 25],
  ])("of %i is %i-%i", (year, month, day) => expect(easterSunday(year)).toEqual({ month, day }));

  it("is a Sunday from 22 March to 25 April in every year to 4000", () => {
    for (let year = 1753; year <= 4000; year++) {
      const { month, day } = easterSunday(year);
      expect(new Date(Date.UTC(year, month - 1, day)).getUTCDay(), String(year)).toBe(0);
      expect(month * 100 + day).toBeGreaterThanOrEqual(322);
      expect(month * 100 + day).toBeLessThanOrEqual(425);
    }
  });
});
