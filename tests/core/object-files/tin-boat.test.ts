import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { anomaliesOf } from "#core/object-files/anomalies";
import { withDatesWorded } from "#core/object-files/derived";
import { estimateOf, evidenceOf } from "#core/object-files/evidence";
import { cautionsOf } from "#core/object-files/finding";
import { noticesOf } from "#core/object-files/notices";
import { checkProvenance } from "#core/object-files/provenance";
import { sizesOf } from "#core/object-files/sizes";
import { done, entry, fileOf, hash, id, pin, THIS_YEAR, type Typed } from "./story.ts";

/*
 * A clockwork boat from an attic, all of it invented. Pell & Daughters printed a gull on its deck from 1919 on; the same
 * gull is struck under the hull. The label of Crane's toy shop was in use from 1934 on, when boats of its line had not
 * been made for six years. A receipt of 1924, an album page of 1925 and a letter of 1979, which tells of Christmas 1913.
 */
const gull = entry("gull-in-ring", {
  title: "Gull in a ring",
  period: "1919/1931",
  placeOnObject: "on the deck, near the funnel",
  marksPerObject: 1,
});
const shop = entry("cranes-toy-shop", {
  title: "Crane's toy shop, label",
  kind: "label",
  makerPart: "retailed",
  maker: { slug: "crane", name: "Crane's toy shop" },
  period: "1934/1952",
});
const copy = entry("gull-in-ring-copied", {
  title: "Gull in a ring, copied",
  period: "1990/..",
  makerPart: "other",
});
const ENTRIES = [gull, shop, copy];

const LOOK_UP = { look_up: id(700), model_name: "marks", model_version: "7", probability: "0.93" };
const STORY: readonly Typed[] = [
  ["describe", { title: "Clockwork steamer", family: "tin and wooden toys", description: "From an attic" }],
  [
    "line",
    {
      name: "Steamers, second series",
      sizes: "24, 32",
      unit: "cm",
      when: "1920/1928",
      source: "An invented catalogue",
    },
  ],
  ["measurement", { id: id(1), measured: "length", amount: "28.1", unit: "cm" }],
  ["measurement", { id: id(2), measured: "height-standing", amount: "24.2", unit: "cm" }],
  ["mark", { id: id(3), kind: "mark", technique: "printed", place: "deck", words: "" }],
  pin(3, gull, LOOK_UP),
  ["mark", { id: id(4), kind: "mark", technique: "stamped", place: "under the hull" }],
  pin(4, gull, LOOK_UP),
  ["mark", { id: id(5), kind: "label", technique: "paper", place: "stern" }],
  pin(5, shop, { probability: "0.88" }),
  ["observation", { id: id(6), observed: "seen", point: "tin-colour", option: "litho" }],
  ["observation", { id: id(7), observed: "absent", point: "tin-repair" }],
  ["observation", { id: id(8), observed: "seen", point: "tin-wear", value: "Worn alike to the keel" }],
  ["observation", { id: id(9), observed: "not examined", point: "tin-recent" }],
  ["document", { id: id(20), kind: "receipt", title: "Receipt", when: "1924-12-19" }],
  ["document", { id: id(21), kind: "album page", title: "Album page", when: "1925" }],
  ["document", { id: id(22), kind: "letter", title: "Letter of a grandchild", when: "1979-02" }],
  [
    "event",
    {
      id: id(30),
      kind: "given",
      to: "Jonas Trell",
      when: "Christmas 1913",
      documents: id(22),
      told: "He had it for Christmas 1913",
    },
  ],
  [
    "event",
    {
      id: id(31),
      kind: "sold",
      from: "a shop",
      to: "Edda Trell",
      when: "1924-12-19",
      documents: id(20),
      told: "One steamer",
    },
  ],
  [
    "event",
    {
      id: id(32),
      kind: "photographed",
      to: "Edda Trell",
      when: "1925",
      documents: id(21),
      told: "With the boat on the pond",
    },
  ],
  [
    "event",
    {
      id: id(33),
      kind: "inherited",
      from: "Edda Trell",
      to: "Mara Osk",
      when: "1979",
      documents: id(22),
      passage: "by descent to",
    },
  ],
];
const file = fileOf("tin and wooden toys", ...STORY);
const estimate = estimateOf(file, ENTRIES, THIS_YEAR);
const anomalies = anomaliesOf(file, ENTRIES);
const found = (is: string) => anomalies.filter((each) => each.is === is);

describe("the tin boat from the attic", () => {
  it("has the anomalies of the story, and no others", () => {
    expect(anomalies.map(({ is }) => is).toSorted()).toEqual([
      "doubled-mark",
      "label-too-young",
      "mark-out-of-place",
      "story-against-date",
    ]);
  });

  it("shows the contradiction between what the letter tells and what the marks say", () => {
    const [story] = found("story-against-date");
    expect(story?.params).toMatchObject({ who: "Jonas Trell", date: "1913-12-25" });
    expect(String(story?.params.against).split("; ").toSorted()).toEqual([
      "Gull in a ring",
      "Steamers, second series",
    ]);
    const { contradictions } = checkProvenance(file, evidenceOf(file, ENTRIES), estimate);
    expect(contradictions.map(({ is, params }) => [is, params.who, params.notBefore])).toEqual([
      ["before-it-was-made", "Jonas Trell", "1920-01-01"],
    ]);
    const memory = story?.explanations.find((each) => each.id === "memory-out");
    expect(memory?.for.map(({ is }) => is)).toEqual(["told-later"]);
    expect(
      story?.explanations.find((each) => each.id === "wrong-match")?.against.map(({ is }) => is),
    ).toEqual(["match-sure"]);
  });

  it("shows the size between two catalogued ones as ambiguous", () => {
    const sizes = sizesOf(file);
    expect(sizes?.verdict).toBe("conventions-disagree");
    expect(sizes?.under.map(({ convention, best }) => [convention, best?.name ?? "none"])).toEqual([
      ["height-standing", "24 cm"],
      ["length", "none"],
    ]);
  });

  it("is of no catalogued size if length alone was measured", () => {
    const one = done(file, ["remove", { list: "measurements", id: id(2) }]);
    const [size] = anomaliesOf(one, ENTRIES).filter(({ is }) => is === "size-not-catalogued");
    expect(size?.params).toEqual({ measured: "28.1 cm", sizes: "24 cm, 32 cm" });
    const master = size?.explanations.find((each) => each.id === "pattern-room-master");
    expect(master?.for.map(({ is }) => is)).toEqual(["size-between", "doubled"]);
  });

  it("shows the doubled mark with every competing explanation, and what speaks for and against each", () => {
    const [doubled] = found("doubled-mark");
    expect(doubled).toMatchObject({
      key: `doubled-mark:${id(3)}+${id(4)}`,
      params: { maker: "Pell & Daughters", count: 2, said: 1 },
    });
    const sides = doubled?.explanations.map((each) => [
      each.id,
      each.for.map(({ is }) => is),
      each.against.map(({ is }) => is),
    ]);
    expect(sides).toEqual([
      ["factory-habit", ["techniques-differ", "seen-even-wear"], ["entry-says-one"]],
      ["factory-error", [], ["techniques-differ"]],
      ["pattern-room-master", ["same-entry"], []],
      ["repair-with-second-mark", [], ["absent-repair"]],
      ["assembled-from-two", [], ["seen-even-wear"]],
      ["later-forgery", ["techniques-differ"], ["seen-even-wear", "documented"]],
    ]);
  });

  it("leaves what was not examined out of every explanation", () => {
    const named = anomalies.flatMap(({ explanations }) =>
      explanations.flatMap((each) => [...each.for, ...each.against]),
    );
    expect(named.flatMap(({ items }) => items.map((item) => item.id))).not.toContain(id(9));
  });

  it("shows a shop's label younger than the boat can be, without making the boat younger", () => {
    const [label] = found("label-too-young");
    expect(label?.params).toEqual({ place: "stern", from: "1934-01-01", notAfter: "1928-12-31" });
    expect(label?.explanations.find((each) => each.id === "sold-again")?.for.map(({ is }) => is)).toEqual([
      "has-retailer",
      "gift-before-label",
    ]);
    expect(estimate.conflicts.flat()).not.toContain(`marks:${id(5)}`);
  });

  it("computes the date: from 1920 to the receipt, whatever the letter says", () => {
    const { from, to } = estimate.shortest[80].ranges[0] ?? { from: 0, to: 0 };
    expect(from).toBeGreaterThanOrEqual(1919);
    expect(to).toBeLessThanOrEqual(1925);
    expect(estimate.notBefore).toBeNull();
    const without = done(file, ["remove", { list: "events", id: id(30) }]);
    const { notBefore, notAfter } = estimateOf(without, ENTRIES, THIS_YEAR);
    expect([notBefore?.day, notAfter?.day]).toEqual(["1920-01-01", "1924-12-19"]);
  });

  it("says dates in EDTF, or that there is none", () => {
    const { contradictions, gaps, questions } = checkProvenance(file, evidenceOf(file, ENTRIES), estimate);
    const said = [...anomalies, ...contradictions, ...gaps, ...questions];
    const dates: string[] = [];
    for (const { params } of said) withDatesWorded(params, (edtf) => dates.push(edtf));
    expect(dates.length).toBeGreaterThan(5);
    expect(dates.filter((date) => !parseInterval(date).ok)).toEqual([]);
  });

  it("never picks an explanation: what the examiner weighs stays with the anomaly", () => {
    const [doubled] = found("doubled-mark");
    expect(file.stances).toEqual([]);
    const weighed = done(file, [
      "stance",
      { id: id(40), anomaly: doubled?.key ?? "", explanation: "factory-habit", weight: "likely" },
    ]);
    const later = done(weighed, ["measurement", { id: id(41), measured: "width", amount: "7 cm" }]);
    expect(anomaliesOf(later, ENTRIES).map(({ key }) => key)).toContain(later.stances[0]?.anomaly);
  });

  it("cautions beside a finding that says more than the file", () => {
    const stated = done(file, [
      "finding",
      { rung: "by", maker: "Pell & Daughters", own_date: "1950", own_date_reasons: "A feeling" },
    ]);
    expect(cautionsOf(stated, anomalies, estimate).map(({ is }) => is)).toEqual([
      "by-with-open-anomalies",
      "own-date-outside",
    ]);
    const modest = done(file, ["finding", { rung: "marked by", maker: "Pell & Daughters" }]);
    expect(cautionsOf(modest, anomalies, estimate)).toEqual([]);
    const pinned = done(modest, pin(4, copy));
    expect(cautionsOf(pinned, anomalies, estimate).map(({ is }) => is)).toEqual([
      "stands-on-other-revisions",
    ]);
  });

  it("is told when an entry it stands on has changed", () => {
    expect(noticesOf(file, ENTRIES)).toEqual([]);
    const revised = {
      ...gull,
      state: "disputed",
      revision: { id: id(501), number: 2, contentHash: hash(2) },
    } as const;
    const notices = noticesOf(file, [revised]);
    expect(notices.map(({ is, items }) => [is, items[0]?.id])).toEqual([
      ["disputed", id(3)],
      ["revised", id(3)],
      ["disputed", id(4)],
      ["revised", id(4)],
      ["gone", id(5)],
    ]);
    expect(notices[1]?.params).toMatchObject({ pinned: 1, now: 2 });
  });
});
