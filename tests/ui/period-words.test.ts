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
  ["1871-05", "1871"],
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
