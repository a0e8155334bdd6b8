import { createTranslator } from "next-intl";
import { expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { wordPeriod } from "../../app/_ui/period-words.tsx";
import messages from "../../messages/en.json" with { type: "json" };

const t = createTranslator({ locale: "en-GB", messages, namespace: "period" });

it.each([
  ["1871", "1871"],
  ["1871~", "about 1871"],
  ["1871?", "perhaps 1871"],
  ["1871%", "perhaps about 1871"],
  ["1871-05", "May 1871"],
  ["1911-03-12", "12 March 1911"],
  ["1908-22", "summer 1908"],
  ["2019-24", "winter 2019"],
  ["2001-34", "second quarter of 2001"],
  ["156X-12-25", "25 December, in the 1560s"],
  ["1985-04-XX", "a day of April 1985"],
  ["2004-XX", "a month of 2004"],
  ["1985-XX-XX", "a day of 1985"],
  ["1560-XX-25", "the 25th of a month of 1560"],
  ["1984-1X", "some time from October 1984 to December 1984"],
  ["XXXX-12-XX", "a day of December, in a year not known"],
  ["1XXX", "a year from 1000 to 1999"],
  ["1950S2", "about 1950 (within 1900 to 1999)"],
  ["2004-06-~11", "11 June 2004 (the day is about right)"],
  ["2004?-06-11", "11 June 2004 (the year is uncertain)"],
  ["[1667,1668,1670..1672]", "1667, 1668 or 1670 to 1672"],
  ["{1960,1961-12}", "1960 and December 1961"],
  ["[..1760-12-03]", "3 December 1760 or before"],
  ["{1760-12..}", "December 1760 and all after"],
  ["-0011/-0008", "12 BCE to 9 BCE"],
  ["../..", "at any time"],
  ["1985-04-12T23:20:30", "12 April 1985, 23:20:30"],
  ["../1922-08", "until August 1922"],
  ["1871/1890", "1871 to 1890"],
  ["1871/1890~", "1871 to about 1890"],
  ["1902/..", "from 1902"],
  ["1902/", "from 1902, end not known"],
  ["../1920", "until 1920"],
  ["/1920", "beginning not known, until 1920"],
  ["192X", "the 1920s"],
  ["187X/1890", "the 1870s to 1890"],
  ["19XX", "the 1900s (century)"],
])("says %s as “%s”", (edtf, words) => {
  const parsed = parseInterval(edtf);
  if (!parsed.ok) throw new Error(`${edtf} was not read: ${parsed.error.rule}`);
  expect(wordPeriod(parsed.value, t)).toBe(words);
});
