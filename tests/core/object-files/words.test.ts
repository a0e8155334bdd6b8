import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { createTranslator } from "use-intl/core";
import { expect, it } from "vitest";
import { ANOMALIES, NOTICES, PROVENANCE_REMARKS, withDatesWorded } from "#core/object-files/derived";
import { CAUTIONS } from "#core/object-files/finding";
import { LISTS } from "#core/object-files/object-file";
import table from "../../../app/_core/object-files/anomaly-explanations.json" with { type: "json" };
import messages from "../../../messages/en.json" with { type: "json" };

const folder = fileURLToPath(new URL("../../../app/_core/object-files", import.meta.url));
const source = readdirSync(folder)
  .filter((name) => name.endsWith(".ts") && name !== "difference-of-files.ts")
  .map((name) => readFileSync(`${folder}/${name}`, "utf8"))
  .join("\n");
const found = (pattern: RegExp) => [...source.matchAll(pattern)].map(([, word = ""]) => word);

it("everything derived has words, and nothing has that is not derived", () => {
  const rows = Object.values(table).flat();
  const rules = rows.flatMap((row) => [...row.for, ...row.against]);
  const { anomaly, provenance, notice, caution, explanation, argument } = messages.objects;
  expect(Object.keys(anomaly)).toEqual([...ANOMALIES]);
  expect(Object.keys(provenance)).toEqual([...PROVENANCE_REMARKS]);
  expect(Object.keys(notice).toSorted()).toEqual([...NOTICES].toSorted());
  expect(Object.keys(caution)).toEqual([...CAUTIONS]);
  expect(Object.keys(explanation).toSorted()).toEqual([...new Set(rows.map(({ id }) => id))].toSorted());
  const said = rules.map((rule) =>
    rule.replace(/^topic-(\w+):(\w+) ?(\w*)$/, (_, a, b, c) => [a, b, c].filter(Boolean).join("-")),
  );
  expect(said.filter((rule) => !Object.hasOwn(argument, rule))).toEqual([]);
});

it("every refusal has words for its rule and its field", () => {
  const rules = [...found(/rule: "([\w-]+)"/g), ...found(/refuse\([^,()]+(?:\([^)]*\))?, "([\w-]+)"/g)];
  const words: Readonly<Record<string, string>> = { ...messages.importRules, ...messages.rules };
  expect(new Set(rules).size).toBeGreaterThan(18);
  expect(rules.filter((rule) => words[rule] === undefined)).toEqual([]);
  const fields = [
    ...found(/read\.\w+(?:<\w+>)?\(\s*"([\w-]+)"/g),
    ...found(/field: "([\w-]+)"/g),
    ...LISTS,
    "explanation-12-says",
  ];
  const named: Readonly<Record<string, string>> = messages.fields;
  expect(fields.length).toBeGreaterThan(60);
  expect([...new Set(fields.filter((field) => named[field] === undefined))]).toEqual([]);
});

const t = createTranslator<Record<string, never>>({ locale: "en-GB", messages: messages.objects as never });
const say = (key: string, params: object) => t(key as never, params as never);

it.each([
  [
    "anomaly.doubled-mark",
    { count: 2, maker: "Pell", said: 1 },
    "Two marks of Pell stand on it; its entries say that an object bears one.",
  ],
  [
    "anomaly.doubled-mark",
    { count: 3, maker: "Pell", said: 0 },
    "3 marks of Pell stand on it, and one is usual.",
  ],
  [
    "anomaly.story-against-date",
    { who: "Jonas", kind: "given", date: "1913", against: "Gull" },
    "It cannot have been with Jonas, given 1913, if this is right: Gull.",
  ],
  [
    "anomaly.reproduction-near",
    { title: "Gull", copies: "none", originals: "Tern" },
    "The match, “Gull”, is known to imitate another: Tern.",
  ],
  [
    "provenance.before-it-was-made",
    { who: "Ada", kind: "given", date: "1913", notBefore: "1914" },
    "Ada had it 1913, before it could have been made: not before 1914.",
  ],
  [
    "provenance.made-against-object",
    { date: "1930", notBefore: "1914", notAfter: "1927" },
    "It is told to have been made 1930; the object itself says not before 1914, not after 1927.",
  ],
  [
    "provenance.made-against-object",
    { date: "1930", notBefore: "none", notAfter: "1927" },
    "It is told to have been made 1930; the object itself says not after 1927.",
  ],
  [
    "provenance.without-document",
    { kind: "moved", who: "none", date: "none" },
    "No document stands behind this: moved.",
  ],
  [
    "caution.by-with-open-anomalies",
    { count: 1 },
    "“By” is stated while something that does not fit is not weighed.",
  ],
])("%s %j", (key, params, words) => expect(say(key, params)).toBe(words));

it("puts dates into words in what is derived, and leaves alone what is none", () => {
  const params = { date: "1921-03-27", notBefore: "none", kind: "given", years: 3 };
  expect(withDatesWorded(params, (edtf) => `the day ${edtf}`)).toEqual({
    ...{ date: "the day 1921-03-27", notBefore: "none", kind: "given", years: 3 },
  });
});
