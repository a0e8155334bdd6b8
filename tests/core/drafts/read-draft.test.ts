import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DraftPhotograph } from "#core/drafts/draft";
import { DRAFT_FIELDS, groupOf, isDraftField, photographField } from "#core/drafts/draft-fields";
import { readDraft } from "#core/drafts/read-draft";
import { typeContent } from "#core/drafts/type-content";
import type { Typed } from "#core/questions/typed-text";

const sha256 = "0123456789abcdef".repeat(4);
const photograph: DraftPhotograph = { sha256, width: 800, height: 600, proposed: null };
const of = (part: Parameters<typeof photographField>[1]) => photographField(sha256, part);

const whole: Typed = {
  title: "Horse’s head, W·CRAY",
  kind: "mark",
  field: "metalwork",
  description: "A horse’s head under W·CRAY in a beaded hexagon.",
  [of("credit")]: "Ansa Hollin",
  [of("licence")]: "CC BY 4.0",
};
const read = (typed: Typed, isChange = false) => readDraft({ ...whole, ...typed }, [photograph], isChange);
const rules = (typed: Typed) => read(typed).errors.map(({ field, rule }) => `${field} ${rule}`);

describe("a draft", () => {
  it("is read whole when it has the minimum", () => {
    expect(read({}).errors).toEqual([]);
    expect(read({}).photographs).toMatchObject([
      {
        sha256,
        region: { x: 0, y: 0, width: 800, height: 600, turn: 0 },
        impression: null,
        pixelsPerMm: null,
      },
    ]);
  });

  it("needs a title, a kind, a field, a description and a photograph with credit and licence", () => {
    expect(readDraft({}, [], false).errors.map(({ field, rule }) => `${field} ${rule}`)).toEqual([
      "photograph photograph-needed",
      "title required",
      "kind required",
      "field required",
      "description required",
    ]);
    expect(rules({ [of("credit")]: "", [of("licence")]: " " })).toEqual([
      `${of("credit")} required`,
      `${of("licence")} required`,
    ]);
  });

  it("asks why an entry is changed, and of a new one not", () => {
    expect(read({}, true).errors).toMatchObject([{ field: "summary", rule: "required" }]);
    expect(read({ summary: "The date of the touch ledger." }, true).errors).toEqual([]);
  });

  it.each([
    [{ kind: "thing" }, "kind one-of"],
    [{ field: "alchemy" }, "field one-of"],
    [{ technique: "wished" }, "technique one-of"],
    [{ title: "a".repeat(201) }, "title text-longest"],
    [{ period: "soon" }, "period edtf"],
    [{ period: "1890/1871" }, "period edtf-order"],
    [{ size_mm: "large" }, "size_mm size"],
    [{ size_mm: "0 x 3" }, "size_mm size"],
    [{ variant_of: "/makers/wilm-cray" }, "variant_of entry-address"],
    [{ maker: "wilm-cray", new_maker: "Wilm Cray", new_maker_kind: "person" }, "new_maker one-maker"],
    [{ new_maker: "Wilm Cray" }, "new_maker_kind one-of"],
    [{ new_maker: "···", new_maker_kind: "firm" }, "new_maker name-letters"],
    [{ "citation-1-title": "Touches", "citation-1-kind": "book" }, "citation-1-author required"],
    [{ "citation-1-title": "Touches", "citation-1-author": "M. Oldacre" }, "citation-1-kind one-of"],
    [{ [of("impression")]: "1.5" }, `${of("impression")} whole-number`],
    [{ [of("pixels_per_mm")]: "-2" }, `${of("pixels_per_mm")} number-above`],
    [{ [of("x")]: "700", [of("width")]: "300" }, `${of("x")} region-inside`],
    [{ [of("width")]: "wide" }, `${of("x")} region-numbers`],
  ] as [Typed, string][])("refuses %j", (typed, rule) => {
    expect(rules(typed)).toEqual([rule]);
  });

  it("asks of a web page its address and the day it was seen, and of nothing else", () => {
    const page = {
      "citation-2-kind": "web page",
      "citation-2-author": "Hallowdene Museum",
      "citation-2-title": "Movements",
    };
    expect(rules(page)).toEqual(["citation-2-address web-address", "citation-2-seen day"]);
    const seen = {
      "citation-2-address": "https://museum.example/movements",
      "citation-2-seen": "2026-02-30",
    };
    expect(rules({ ...page, ...seen })).toEqual(["citation-2-seen day"]);
    expect(read({ ...page, ...seen, "citation-2-seen": "2026-02-28" }).content.citations).toHaveLength(1);
    expect(rules({ ...page, ...seen, "citation-2-seen": "2026-02-28", "citation-2-kind": "book" })).toEqual([
      "citation-2-address web-page-only",
      "citation-2-seen web-page-only",
    ]);
  });

  it.each([
    ["1871/1890~", "1871/1890~"],
    ["1871 to 1890", "1871/1890"],
    ["1871–90", "1871/1890"],
    ["about 1902", "1902~"],
    ["1920s", "192X"],
    ["after 1902", "1902/.."],
  ])("understands the period %s as %s", (typed, edtf) => {
    expect(read({ period: typed }).content.period).toBe(edtf);
  });

  it("reads words line by line, sizes as people write them, entries by their addresses", () => {
    const typed = {
      words: "W·CRAY\n[...]MOOR",
      size_mm: "15,5 × 16 mm",
      colours: "blue, black",
      variant_of: "https://host.example/entries/horse-head horse-tail; horse-tail",
    };
    expect(read(typed).content).toMatchObject({
      words: "W·CRAY / [...]MOOR",
      sizeMm: { width: 15.5, height: 16 },
      colours: ["blue", "black"],
      relations: [
        { kind: "variant of", entry: "horse-head" },
        { kind: "variant of", entry: "horse-tail" },
      ],
    });
  });

  it("frames where the mark is thought to be until somebody frames it", () => {
    const proposed = { x: 10, y: 20, width: 100, height: 90, turn: 0 };
    expect(readDraft(whole, [{ ...photograph, proposed }], false).photographs[0]?.region).toEqual(proposed);
  });

  it("says again what a revision says: typed and read, it is the same", () => {
    const [text, kind] = [fc.stringMatching(/^[A-Za-z][a-z]{0,20}$/), fc.constantFrom("book", "catalogue")];
    const citation = fc.record({ kind, author: text, title: text, year: text, place: text });
    fc.assert(
      fc.property(
        fc.record({
          title: text,
          description: text,
          emblem: text,
          period: fc.constantFrom("", "1871/1890~", "192X"),
        }),
        fc.array(citation, { maxLength: 4 }),
        fc.array(text, { maxLength: 3 }),
        (fields, citations, sources) => {
          const typed: Record<string, string> = { ...fields, sources: sources.join("\n") };
          for (const [i, each] of citations.entries())
            for (const [part, value] of Object.entries(each)) typed[`citation-${i + 1}-${part}`] = value;
          const once = read(typed);
          const shown = once.photographs.map((each) => ({ ...each, id: "p" }));
          const again = readDraft(typeContent(once.content, shown), [photograph], false);
          expect(once.errors).toEqual([]);
          expect(again.content).toEqual(once.content);
          expect(again.photographs).toEqual(once.photographs);
        },
      ),
    );
  });
});

describe("the fields of a draft", () => {
  it("are those of the form alone", () => {
    for (const name of [...DRAFT_FIELDS, "citation-20-seen", of("turn")])
      expect(isDraftField(name)).toBe(true);
    for (const name of [
      "id",
      "citation-21-seen",
      "citation-0-title",
      "citation-1-colour",
      "photograph-x-shows",
    ])
      expect(isDraftField(name)).toBe(false);
  });

  it("are chosen together where they belong together", () => {
    expect(groupOf("citation-1-title")).toBe("citation-1");
    expect(groupOf(of("shows"))).toBe(groupOf(of("x")));
    expect(groupOf("title")).toBe("title");
  });
});
