import { describe, expect, it } from "vitest";
import { makeSlug } from "#core/entries/make-slug";
import { isSlug } from "#core/entries/slug";
import type { FieldError } from "#core/field-error";
import { NOTHING_KNOWN } from "#core/look-ups/knowledge";
import { parseEntry } from "#core/questions/parse-entry";
import { parseDeclineReason, parseProposal, slugInAddress } from "#core/questions/parse-proposal";
import { parsePublication } from "#core/questions/parse-publication";
import { prefillEntry } from "#core/questions/prefill-entry";
import { tidyLine } from "#core/questions/typed-text";
import type { Result } from "#core/result";

const rules = (result: Result<unknown, readonly FieldError[]>): readonly string[] =>
  result.ok ? [] : result.error.map(({ field, rule }) => `${field} ${rule}`);

const publication = {
  title: "Horse’s head under a tankard",
  about: "A pewter tankard of a quart, the mark under its base.",
  name: "Ansa Hollin",
  licence: "CC BY 4.0",
  credit: "Ansa Hollin",
  confirmed: "yes",
};

describe("publishing a look-up", () => {
  it("takes what is complete", () => {
    expect(parsePublication(publication)).toMatchObject({
      ok: true,
      value: { licence: "CC BY 4.0", published: { name: "Ansa Hollin" } },
    });
  });

  it("names every field that is wrong, its rule, and the value", () => {
    expect(rules(parsePublication({}))).toEqual([
      "title required",
      "about required",
      "name required",
      "licence required",
      "credit required",
      "confirmed confirmed",
    ]);
    const long = parsePublication({ ...publication, title: "x".repeat(121), about: "short" });
    expect(long).toMatchObject({
      error: [
        { field: "title", rule: "text-longest", params: { longest: 120, length: 121 } },
        { field: "about", rule: "text-shortest", received: "short", params: { shortest: 20, length: 5 } },
      ],
    });
  });

  it("keeps no sign that cannot be seen or turns a line round", () => {
    expect(tidyLine("a\u0000b\u202Ec\u2066d\n\n e")).toBe("a b c d e");
  });
});

const proposal = {
  mark: "A horse’s head",
  reasons: "The bridle and the beaded frame are the same.",
  basis: "compared photographs",
  name: "Bram",
};

describe("proposing an answer", () => {
  it("takes words, or an entry by its slug or address", () => {
    expect(parseProposal(proposal)).toMatchObject({
      value: { answer: { kind: "words", mark: "A horse’s head", maker: "", period: "" } },
    });
    const address = "https://reference.example/entries/anchor-in-shield?photograph=2#why";
    expect(parseProposal({ ...proposal, entry: address })).toMatchObject({
      value: { answer: { kind: "entry", entry: "anchor-in-shield" } },
    });
  });

  it.each([
    ["/entries/anchor-in-shield", "anchor-in-shield"],
    ["anchor-in-shield", "anchor-in-shield"],
    ["https://reference.example/makers/anchor", null],
    ["Anchor in a shield", null],
    ["javascript:alert(1)", null],
  ])("reads %s as %s", (typed, slug) => {
    expect(slugInAddress(typed)).toBe(slug);
  });

  it("names every field that is wrong", () => {
    expect(rules(parseProposal({ reasons: "It is.", basis: "a feeling" }))).toEqual([
      "mark mark-or-maker",
      "reasons text-shortest",
      "basis one-of",
      "name required",
    ]);
    expect(rules(parseProposal({ ...proposal, entry: "not an address" }))).toEqual(["entry entry-address"]);
    expect(rules(parseDeclineReason({ reason: "No." }))).toEqual(["reason text-shortest"]);
  });
});

const typed = {
  title: "Horse’s head, W·CRAY",
  kind: "mark",
  description: "A horse’s head under W·CRAY in a beaded hexagon.",
  licence: "CC BY 4.0",
  credit: "Ansa Hollin",
};

describe("making an entry", () => {
  it("reads the fields by the rules of the import", () => {
    const size = { size_mm: "15,5 × 16 mm", period: "1790~/1812", sources: "A day book\nA bill of 1801" };
    expect(parseEntry({ ...typed, ...size })).toMatchObject({
      value: {
        content: {
          sizeMm: { width: 15.5, height: 16 },
          period: "1790~/1812",
          sources: ["A day book", "A bill of 1801"],
          maker: null,
        },
        newMaker: null,
      },
    });
  });

  it("names every field that is wrong", () => {
    const wrong = { kind: "thing", period: "1790-1812", size_mm: "large" };
    expect(rules(parseEntry({ ...typed, title: "", ...wrong }))).toEqual([
      "title required",
      "kind one-of",
      "size_mm numbers",
      "period edtf",
    ]);
    expect(rules(parseEntry({}))).toEqual([
      "title required",
      "description required",
      "kind required",
      "licence required",
      "credit required",
    ]);
  });

  it("records a new maker with a kind, and not beside a known one", () => {
    const maker = { new_maker: "Wilm Cray", new_maker_kind: "person", new_maker_place: "Ostermoor" };
    expect(parseEntry({ ...typed, ...maker })).toMatchObject({
      value: {
        newMaker: { key: "wilm-cray", kind: "person" },
        content: { maker: "wilm-cray", makerPart: "made" },
      },
    });
    expect(rules(parseEntry({ ...typed, ...maker, maker: "jonas-harl", new_maker_kind: "" }))).toEqual([
      "new_maker one-maker",
      "new_maker_kind one-of",
    ]);
  });

  it("is offered what the question says", () => {
    const at = "2026-11-25T09:00:00.000Z";
    const answer = { kind: "words", maker: "Wilm Cray", mark: "Horse’s head", period: "1790/1812" } as const;
    const asked = { ...NOTHING_KNOWN, letters: "W?CR*", widthMm: 15, heightMm: 16, material: "pewter" };
    const one = {
      number: 1,
      at,
      answer,
      reasons: "",
      basis: "other",
      name: "Bram",
      standing: { is: "accepted" },
    } as const;
    const question = {
      state: "answered",
      accepted: 1,
      title: "A horse",
      text: "Under a tankard.",
      name: "Ansa",
      at,
      entry: null,
      proposals: [one],
    } as const;
    expect(prefillEntry(question, asked, { licence: "CC0 1.0", credit: "Ansa" })).toMatchObject({
      title: "Horse’s head",
      new_maker: "Wilm Cray",
      period: "1790/1812",
      words: "W[...]CR[...]",
      size_mm: "15 x 16",
      description: "Under a tankard.",
      licence: "CC0 1.0",
    });
  });

  it.each(["Tower, Ö·B — ringed!", "  ", "Ä".repeat(300), "ПАР 9"])("makes an address of %s", (title) => {
    const slug = makeSlug(title);
    expect(slug === "" || isSlug(slug)).toBe(true);
  });
});
