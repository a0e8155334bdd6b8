import { describe, expect, it } from "vitest";
import { decode } from "#core/decoding/decoders";
import { decodeWording, SIGNS, WORDING_RULES } from "#core/decoding/label-wording";
import { decodeMaking, FEATURES } from "#core/decoding/making";

function read(text: string, signs: readonly string[] = []) {
  const decoded = decodeWording({ text, signs });
  if (!decoded.ok) throw new Error(`refused by ${decoded.error.rule}`);
  return decoded.value;
}
const rules = (text: string) => read(text).statements.map(({ rule }) => rule);

describe("the wording of a label", () => {
  it("fulfils every rule that it holds, each with its law and what was found", () => {
    const label = "Made in\nU.S. ZONE Germany\nD.R.G.M. Déposé\nBear Works Ltd, New York 10, N.Y.";
    expect(rules(label)).toEqual([
      ...["de-uszone", "us-zone", "de-drgm", "us-madein", "us-1890", "fr-depose", "gb-ltd"],
    ]);
    const drgm = read(label).statements.find(({ rule }) => rule === "de-drgm");
    expect(drgm).toEqual({
      kind: "wording",
      event: "labelled",
      edtf: "1891-10-01/1945~",
      reliability: 0.98,
      reason: expect.stringContaining("1 October 1891"),
      source: expect.stringContaining("1 June 1891"),
      basis: "published",
      exceptions: expect.stringContaining("1952"),
      rule: "de-drgm",
      jurisdiction: "DE",
      what: "D.R.G.M.",
      found: "D.R.G.M",
    });
  });

  it.each([
    ["MADE IN OCCUPIED JAPAN", "jp-occ", "jp-japan"],
    ["Made in Western Germany", "de-west", "de-madein"],
    ["MADE IN GERMANY US-ZONE", "de-uszone", "de-madein"],
    ["RN 1234", "us-rn-fur", "us-rn"],
    ["RN 54321", "us-rn", "us-rn-fur"],
    ["Akron, OH 44301", "us-zip", "us-zone"],
    ["BAVARIA GERMANY", "us-1890", "us-nation"],
    ["96450 Coburg", "de-plz5", "us-zip"],
    ["limited edition", "", "gb-ltd"],
    ["Niceness", "", "ce-toy"],
    ["Ceylon tea, Japanese style", "lk", "jp-japan"],
  ])("of %j is %s and not %s", (text, is, isNot) => {
    const found = rules(text);
    if (is !== "") expect(found).toContain(is);
    expect(found).not.toContain(isNot);
  });

  it.each([
    ["Dr. Pell, New England"],
    ["anno 1890 Nürnberg"],
    ["patented in 12345"],
    ["the 1st, a1 5th"],
    ["Persian pattern, Siamese cat, dressed in Saarland linen"],
  ])("finds no rule in %j", (text) => {
    expect(rules(text)).toEqual([]);
  });

  it.each([
    ["PAT. NO. 2,046,837", "us-patents", "PAT. NO. 2,046,837"],
    ["Acme Patd 174465 Boston", "us-patents", "Patd 174465"],
    ["DES. PAT. 48,160", "us-design-patents", "DES. PAT. 48,160"],
    ["Made in England Rd. No. 285771", "registered-designs", "Rd. No. 285771"],
    ["Reg. No. 50,000", "us-trade-marks", "Reg. No. 50,000"],
  ])("says who reads the number in %j", (text, decoder, number) => {
    const further = read(text).notes.filter(({ is }) => is === "read-further");
    expect(further).toEqual([{ is: "read-further", params: { decoder, number } }]);
    expect(decode(decoder as "us-patents", { number }).ok).toBe(true);
  });

  it.each(["D.R.P. 123456", "PA. REG. NO. 1234", "patented 1895"])(
    "leaves the number in %j alone",
    (text) => {
      expect(read(text).notes.filter(({ is }) => is === "read-further")).toEqual([]);
    },
  );

  it("dates a copyright by its year, as of the design alone", () => {
    const [year] = read("Copyright 1936").statements;
    expect(year).toMatchObject({
      edtf: "1936/..",
      basis: "common-practice",
      reason: expect.stringContaining("1936"),
    });
  });

  it("gives RN numbers between the two runs no date", () => {
    expect(rules("RN 9000")).toEqual([]);
    expect(read("RN 9000").notes).toEqual([{ is: "nothing-known" }]);
  });

  it("says of safety signs that they prove no old toy safe, and of laws without a date what they are", () => {
    expect(read("EN71 CE").notes).toEqual([{ is: "unsafe" }, { is: "one-label" }]);
    expect(read("", ["gb-kite"]).notes).toEqual([{ is: "unsafe" }]);
    expect(read("PAT. PEND.").notes).toMatchObject([{ is: "law" }]);
    expect(read("PAT. PEND.").statements).toEqual([]);
  });

  it("takes each sign that can't be typed", () => {
    for (const { id, edtf } of SIGNS) expect(read("", [id]).statements).toMatchObject([{ rule: id, edtf }]);
  });

  it("has the firmest dates as they were published", () => {
    const edtf = (id: string) => WORDING_RULES.find((rule) => rule.id === id)?.edtf;
    expect(edtf("us-1890")).toBe("1891-03-01/..");
    expect(edtf("jp-occ")).toBe("1947-02-20/1952-04-28");
    expect(edtf("us-zip")).toBe("1963-07-01/..");
    expect(edtf("us-st2")).toBe("1963-10-01/..");
    expect(edtf("upc")).toBe("1974-06-26/..");
    expect(edtf("us-pa")).toBe("1961-07-25/..");
    expect(edtf("de-drp")).toBe("1877-07-01/1945~");
  });

  it.each([
    ["", [], "wording", "wording-empty"],
    ["x".repeat(2001), [], "wording", "text-longest"],
    ["", ["unicorn"], "signs", "one-of"],
  ])("refuses a text or sign, %#", (text, signs, field, rule) => {
    expect(decodeWording({ text, signs })).toMatchObject({ ok: false, error: { field, rule } });
  });
});

describe("materials and construction", () => {
  it("are soft windows with their reason", () => {
    expect(decodeMaking({ features: ["toy-nylon-plush", "hardware-phillips-recess-screw"] })).toMatchObject({
      ok: true,
      value: {
        statements: [
          { kind: "material", event: "made", edtf: "1948/..", reliability: 0.8 },
          { kind: "construction", event: "made", edtf: "1936-07-07/..", reliability: 0.98 },
        ],
      },
    });
  });

  it("are surer when published than when remembered, and when remembered than when customary", () => {
    const soft = FEATURES.filter(({ strength }) => strength === "soft");
    const decoded = decodeMaking({ features: soft.map(({ id }) => id) });
    if (!decoded.ok) throw new Error(decoded.error.rule);
    const by = (basis: string) => decoded.value.statements.find((each) => each.basis === basis)?.reliability;
    expect([by("from-memory"), by("common-practice")]).toEqual([0.8, 0.75]);
  });

  it("are refused when there are none or they are unknown", () => {
    expect(decodeMaking({ features: [] })).toMatchObject({ ok: false, error: { rule: "features-empty" } });
    const unknown = decodeMaking({ features: ["toy-moonstone"] });
    expect(unknown).toMatchObject({
      ok: false,
      error: { rule: "feature-unknown", received: "toy-moonstone" },
    });
  });
});
