import { describe, expect, it } from "vitest";
import { anomaliesOf } from "#core/object-files/anomalies";
import { unansweredRules } from "#core/object-files/arguments";
import { evidenceOf } from "#core/object-files/evidence";
import { marksSaid } from "#core/object-files/marks-said";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import { entry, fileOf, id, pin, type Typed } from "./story.ts";

const mark = (n: number, more = {}): Typed => ["mark", { id: id(n), kind: "mark", place: "base", ...more }];
const kinds = (entries: readonly MatchedEntry[], ...typed: readonly Typed[]) =>
  anomaliesOf(fileOf("ceramics", ...typed), entries).map(({ is }) => is);

describe("two marks of one maker", () => {
  const both = (a: MatchedEntry, b: MatchedEntry, more = {}) =>
    kinds([a, b], mark(1), pin(1, a), mark(2, more), pin(2, b));
  const [gull, tern] = [entry("gull"), entry("tern")];

  it.each([
    ["the same twice, nothing said", gull, gull, ["doubled-mark"]],
    [
      "the same twice, one said",
      { ...gull, marksPerObject: 1 },
      { ...gull, marksPerObject: 1 },
      ["doubled-mark"],
    ],
    ["the same twice, two said", { ...gull, marksPerObject: 2 }, { ...gull, marksPerObject: 2 }, []],
    ["different ones, nothing said", gull, tern, []],
    ["different ones, one said of either", { ...gull, marksPerObject: 1 }, tern, ["doubled-mark"]],
    ["a mark and a label", gull, entry("paper", { kind: "label" }), []],
    ["of a maker nobody knows", entry("gull", { maker: null }), entry("gull", { maker: null }), []],
  ] as const)("%s", (_, a, b, expected) => expect(both(a, b)).toEqual(expected));

  it("is none when the second was added later", () => {
    expect(both(gull, gull, { belongs: "added later" })).toEqual([]);
  });
});

describe("marks of two makers", () => {
  const other = { slug: "orme", name: "Orme Brothers" };
  it.each([
    ["made", ["two-makers"]],
    [null, ["two-makers"]],
    ["decorated", []],
    ["retailed", []],
    ["assayed", []],
  ] as const)("the second %s", (makerPart, expected) => {
    const second = entry("second", { maker: other, makerPart });
    expect(kinds([entry("gull"), second], mark(1), pin(1, entry("gull")), mark(2), pin(2, second))).toEqual(
      expected,
    );
  });
});

describe("a mark younger than what it stands on", () => {
  const late = entry("late", { period: "1850/1860" });
  const body = (option: string): Typed => [
    "observation",
    { id: id(5), observed: "seen", point: "ceramic-body", option },
  ];

  it.each([
    ["pearlware", ["mark-too-young"]],
    ["whiteware", []],
  ])("on %s", (option, expected) => {
    expect(kinds([late], mark(1), pin(1, late), body(option))).toEqual(expected);
  });

  it("names both, and what the object is made of stands behind it", () => {
    const [found] = anomaliesOf(fileOf("ceramics", mark(1), pin(1, late), body("pearlware")), [late]);
    expect(found?.params).toEqual({ place: "base", from: "1850-01-01", notAfter: "1840-12-31" });
    expect(found?.items).toEqual([
      { list: "marks", id: id(1) },
      { list: "observations", id: id(5) },
    ]);
    const narrow = found?.explanations.find((each) => each.id === "table-too-narrow");
    expect(narrow?.for.map(({ is }) => is)).toEqual(["table-from-memory"]);
  });

  it("goes by a label's wording too, without any entry", () => {
    const label = mark(1, { kind: "label", words: "MADE IN OCCUPIED JAPAN" });
    expect(kinds([], label, body("pearlware"))).toEqual(["label-too-young"]);
  });
});

describe("a mark where it is not expected", () => {
  it.each([
    ["under the hull", "on the deck", ["mark-out-of-place"]],
    ["under the hulls", "near the hull", []],
    ["base", "", []],
    ["inside of the lid", "inside of the base", ["mark-out-of-place"]],
  ])("%s, said to be %s", (place, placeOnObject, expected) => {
    const gull = entry("gull", { placeOnObject });
    expect(kinds([gull], mark(1, { place }), pin(1, gull))).toEqual(expected);
  });
});

describe("a known reproduction among the near matches", () => {
  const copy = entry("copy", { makerPart: "other" });
  const gull = entry("gull", { imitatedBy: ["copy"] });
  const near = (slug: string) => ({
    near: JSON.stringify([{ entry: slug, title: slug, probability: 0.04 }]),
  });

  it.each([
    ["copy", ["reproduction-near"]],
    ["tern", []],
  ])("near: %s", (slug, expected) => {
    expect(kinds([gull, copy], mark(1), pin(1, gull, near(slug)))).toEqual(expected);
  });

  it("or the match is itself known to imitate another", () => {
    expect(kinds([gull, copy], mark(1), pin(1, copy))).toEqual(["reproduction-near"]);
  });
});

describe("what a file says of its date", () => {
  it("counts what is absent as evidence, and what nobody examined as none", () => {
    const looked = (observed: string) =>
      evidenceOf(
        fileOf("soft toys", ["observation", { id: id(1), observed, point: "soft-ultraviolet" }]),
        [],
      );
    expect(looked("absent").map(({ interval, basis }) => [interval.edtf, basis])).toEqual([
      ["../1955~", "common-practice"],
    ]);
    expect(looked("not examined")).toEqual([]);
    const seen: Typed = [
      "observation",
      { id: id(1), observed: "seen", point: "soft-ultraviolet", value: "Blue-white" },
    ];
    expect(evidenceOf(fileOf("soft toys", seen), []).map(({ interval }) => interval.edtf)).toEqual([
      "1945~/..",
    ]);
  });

  it("counts entry and wording of one label once, and two steps of one letter once", () => {
    const gull = entry("gull", { period: "1921/1930" });
    const letter: Typed = ["document", { id: id(9), kind: "letter", title: "A letter" }];
    const told = (n: number): Typed => [
      "event",
      { id: id(n), kind: "given", to: `Owner ${n}`, when: "1930", documents: id(9) },
    ];
    const file = fileOf(
      "ceramics",
      mark(1, { words: "MADE IN JAPAN" }),
      pin(1, gull),
      letter,
      told(2),
      told(3),
    );
    const groups = evidenceOf(file, [gull]).map(({ group }) => group);
    expect(groups.length).toBeGreaterThanOrEqual(4);
    expect(new Set(groups)).toEqual(new Set([id(1), id(9)]));
  });

  it("trusts a match no more than its look-up did, and a doubtful step less", () => {
    const gull = entry("gull", { period: "1921/1930" });
    const trust = (typed: Typed) => evidenceOf(fileOf("ceramics", mark(1), typed), [gull])[0]?.reliability;
    expect(trust(pin(1, gull))).toBe(0.95);
    expect(trust(pin(1, gull, { probability: "0.6" }))).toBe(0.57);
    const given = (qualifier: string): Typed => [
      "event",
      { id: id(2), kind: "given", to: "Ada", when: "1930", qualifier },
    ];
    expect(["certain", "probably", "possibly"].map((each) => trust(given(each)))).toEqual([
      0.65,
      expect.closeTo(0.55),
      0.5,
    ]);
  });

  it("lets a shop's label say when it was sold, and one added later nothing", () => {
    const shop = entry("shop", { kind: "label", makerPart: "retailed", period: "1934/1952" });
    const event = (more: object) =>
      evidenceOf(fileOf("ceramics", mark(1, { kind: "label", ...more }), pin(1, shop)), [shop])[0]?.event;
    expect(event({})).toBe("sold");
    expect(event({ belongs: "added later" })).toBeUndefined();
  });
});

it("every rule of the table of explanations is answered", () => expect(unansweredRules()).toEqual([]));

it.each([
  ["Struck once, under the base.", 1],
  ["Each piece bears one mark.", 1],
  ["Stamped twice, on lid and base.", 2],
  ["A gull in a ring.", null],
])("reads how many marks there are out of %j", (text, expected) => expect(marksSaid([text])).toBe(expected));
