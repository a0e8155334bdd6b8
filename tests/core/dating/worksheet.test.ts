import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answerWorksheetForm } from "#core/dating/answer-worksheet-form";
import { DATED_EVENTS, EVIDENCE_KINDS } from "#core/dating/evidence";
import type { Piece } from "#core/dating/piece";
import { formOf, readEvidenceForm } from "#core/dating/read-evidence-form";
import { readWorksheet } from "#core/dating/read-worksheet";
import {
  addressOf,
  EMPTY_WORKSHEET,
  evidenceOf,
  type Worksheet,
  worksheetAddress,
} from "#core/dating/worksheet";

const PIECE: Piece = {
  kind: "wording",
  event: "labelled",
  edtf: "1891-03/..",
  reliability: 0.95,
  reason: "It says “Made in …”, as a law of 1 March 1891 asked of imports; 5 * 3_2.",
  source: "An act, section 6",
  basis: "published",
  exceptions: "",
  group: "A",
  alternatives: ["1900", "[1905,1910]"],
};

function paramsOf(address: string) {
  const params: Record<string, string[]> = {};
  const { searchParams } = new URL(address, "http://x");
  for (const name of searchParams.keys()) params[name] = searchParams.getAll(name);
  return params;
}

const someText = fc.string({ unit: "grapheme", maxLength: 80 }).map((text) => text.replaceAll("\0", ""));
const somePiece: fc.Arbitrary<Piece> = fc.record({
  kind: fc.constantFrom(...EVIDENCE_KINDS),
  event: fc.constantFrom(...DATED_EVENTS),
  edtf: fc.constantFrom(
    "1890",
    "189X~",
    "1871/1890~",
    "../1922-08",
    "[1667,1668..1672]",
    "1908-22",
    "2004-06-~11",
  ),
  reliability: fc.integer({ min: 500, max: 999 }).map((n) => n / 1000),
  reason: someText,
  source: someText,
  basis: fc.constantFrom("published", "from-memory", "common-practice", null),
  exceptions: someText,
  group: fc.constantFrom("A", "B", null),
  alternatives: fc.array(fc.constantFrom("1900", "189X?"), { maxLength: 3 }),
});

describe("a worksheet in its address", () => {
  it("comes back as it was, whatever is written on it", () => {
    fc.assert(
      fc.property(fc.array(somePiece, { maxLength: 5 }), fc.boolean(), (pieces, bounded) => {
        const worksheet: Worksheet = {
          title: "A jug",
          years: bounded ? { from: -20, to: 300 } : null,
          pieces,
        };
        expect(readWorksheet(paramsOf(addressOf(worksheet)))).toEqual({ worksheet, errors: [] });
      }),
    );
  });

  it("is compact, and the same for the same worksheet", () => {
    const address = addressOf({
      ...EMPTY_WORKSHEET,
      pieces: [{ ...PIECE, reason: "", source: "", basis: null, group: null, alternatives: [] }],
    });
    expect(address).toBe("/dates?v=1&e=wo*l*1891-03%2F..*950");
  });

  it("takes one statement more", () => {
    const { group: _, alternatives: __, ...statement } = { ...PIECE, basis: "published" as const };
    const once = worksheetAddress(EMPTY_WORKSHEET, statement);
    const twice = worksheetAddress(readWorksheet(paramsOf(once)).worksheet, statement, ["1911"]);
    const { worksheet } = readWorksheet(paramsOf(twice));
    expect(worksheet.pieces.map(({ edtf, alternatives }) => [edtf, alternatives])).toEqual([
      ["1891-03/..", []],
      ["1891-03/..", ["1911"]],
    ]);
  });

  it("gives the engine evidence named by place", () => {
    const evidence = evidenceOf({ ...EMPTY_WORKSHEET, pieces: [PIECE, PIECE] });
    expect(
      evidence.map(({ id, interval, alternatives }) => [id, interval.firstDay, alternatives?.length]),
    ).toEqual([
      ["1", "1891-03-01", 2],
      ["2", "1891-03-01", 2],
    ]);
  });

  it.each([
    [{ v: "2", e: "wo*l*1890*950" }, "worksheet", "worksheet-version", "2"],
    [{ v: "1", e: "xx*l*1890*950" }, "evidence", "worksheet-kind", "xx"],
    [{ v: "1", e: "wo*x*1890*950" }, "evidence", "worksheet-event", "x"],
    [{ v: "1", e: "wo*l*soon*950" }, "evidence", "worksheet-date", "soon"],
    [{ v: "1", e: "wo*l*1890*1000" }, "evidence", "worksheet-reliability", "1000"],
    [{ v: "1", e: "wo*l*1890*950*q" }, "evidence", "worksheet-basis", "q"],
    [{ v: "1", e: "wo*l*1890*950******soon" }, "evidence", "worksheet-date", "soon"],
    [{ v: "1", e: "" }, "evidence", "worksheet-kind", ""],
    [{ v: "1", y: "1950/1850" }, "years", "worksheet-years", "1950/1850"],
  ])("%j is refused by name", (params, field, rule, received) => {
    expect(readWorksheet(params).errors).toMatchObject([{ field, rule, received }]);
  });

  it("keeps what can be read beside what can't", () => {
    const { worksheet, errors } = readWorksheet({ v: "1", e: ["wo*l*1890*950", "??", "mk*k*1871/1890*900"] });
    expect([worksheet.pieces.length, errors.length, errors[0]?.params?.place]).toEqual([2, 1, 2]);
  });

  it("holds thirty pieces and says when there are more", () => {
    const { worksheet, errors } = readWorksheet({ v: "1", e: Array(31).fill("wo*l*1890*950") });
    expect([worksheet.pieces.length, errors[0]?.rule]).toEqual([30, "worksheet-most"]);
  });
});

describe("the form of a piece", () => {
  it("takes event and reliability from the kind when nothing is said", () => {
    expect(readEvidenceForm({ kind: "mark", when: "c. 1871-90" })).toMatchObject({
      date: { understood: "words" },
      piece: { event: "marked", reliability: 0.95, edtf: "1871~/1890~" },
      errors: [],
    });
  });

  it("gives back the form it was made by", () => {
    const form = formOf(PIECE);
    expect(readEvidenceForm(form).piece).toEqual({ ...PIECE, alternatives: [] });
  });

  it("names each field that is wrong", () => {
    const read = readEvidenceForm({ kind: "mood", when: "soon", sure: "1.5", reason: "x".repeat(301) });
    expect(read.errors.map(({ field, rule }) => [field, rule])).toEqual([
      ["kind", "one-of"],
      ["when", "date"],
      ["sure", "reliability"],
      ["reason", "text-length"],
    ]);
  });
});

describe("the plain form", () => {
  const sheet = { v: "1", e: "mk*k*1871%2F1890*950".replace("%2F", "/") };
  const adding = { ...sheet, act: "add", kind: "story", when: "Christmas 1889" };

  it("shows a date in words as it is understood before it takes it", () => {
    const first = answerWorksheetForm(adding);
    expect(first).toMatchObject({
      state: { shown: "Christmas 1889", errors: [], form: { when: "Christmas 1889" } },
    });
    expect(answerWorksheetForm({ ...adding, shown: "Christmas 1889" })).toEqual({
      go: "/dates?v=1&e=mk*k*1871%2F1890*950&e=st*g*1889-12-25*650#evidence",
    });
    expect(answerWorksheetForm({ ...adding, when: "Easter 1890", shown: "Christmas 1889" })).toMatchObject({
      state: { shown: "Easter 1890" },
    });
  });

  it("takes EDTF at once, unless it may be read in two ways", () => {
    expect(answerWorksheetForm({ ...adding, when: "1889-12-25" })).toMatchObject({ go: expect.any(String) });
    expect(answerWorksheetForm({ ...adding, when: "1905-10" })).toMatchObject({
      state: { shown: "1905-10" },
    });
  });

  it("changes a piece in its place and keeps what it has no field for", () => {
    const edited = { v: "1", e: ["mk*k*1871*950", "nu*k*1890*950*p***x*law*1900"], edit: "2" };
    expect(answerWorksheetForm(edited)).toMatchObject({
      state: { editing: 2, form: { kind: "number", when: "1890" } },
    });
    const changed = { ...edited, act: "add", kind: "number", when: "1890", sure: "0.8" };
    expect(answerWorksheetForm(changed)).toEqual({
      go: "/dates?v=1&e=mk*k*1871*950&e=nu*k*1890*800*****law*1900#evidence",
    });
  });

  it("refuses with what was typed, and says so when the sheet is full", () => {
    expect(answerWorksheetForm({ ...adding, when: "soon" })).toMatchObject({
      state: { shown: "", form: { when: "soon" }, errors: [{ field: "when", rule: "date" }] },
    });
    const full = { ...adding, when: "1889", e: Array(30).fill("mk*k*1871*950") };
    expect(answerWorksheetForm(full)).toMatchObject({
      state: { errors: [{ rule: "worksheet-most", received: "31" }] },
    });
  });
});
