import { describe, expect, it } from "vitest";
import {
  decodeUsDesignPatent,
  decodeUsPatent,
  decodeUsTradeMark,
  US_PATENTS,
} from "#core/decoding/decode-number";
import type { Decoded } from "#core/decoding/decoded";
import { lastNumber } from "#core/decoding/number-table";
import { decodeRegisteredDesign } from "#core/decoding/registered-design";
import type { FieldError } from "#core/field-error";
import type { Result } from "#core/result";

function read(decoded: Result<Decoded, FieldError>): Decoded {
  if (!decoded.ok) throw new Error(`refused by ${decoded.error.rule}`);
  return decoded.value;
}
const ruleOf = (decoded: Result<Decoded, FieldError>) => (decoded.ok ? "none" : decoded.error.rule);
const only = (decoded: Result<Decoded, FieldError>) => read(decoded).statements[0];

describe("a United States patent number", () => {
  it.each(["2046837", "2,046,837", "PAT. NO. 2,046,837", "U.S. Patent 2.046.837", "Pat. 2 046 837."])(
    "is read as it stands: %s",
    (number) => {
      expect(only(decodeUsPatent({ number }))).toMatchObject({ edtf: "1936/..", event: "marked" });
    },
  );

  it("says its number, its year and the table's row in its reason", () => {
    expect(only(decodeUsPatent({ number: "2046837" }))).toEqual({
      kind: "number",
      event: "marked",
      edtf: "1936/..",
      reliability: 0.9,
      reason:
        "United States patent 2,046,837 was issued in 1936, so the piece was marked no earlier: 1936 begins with 2,026,516 in the table.",
      source: expect.stringContaining("Patent and Trademark Office"),
      basis: "from-memory",
      exceptions: expect.stringContaining("Never a making date"),
    });
  });

  it("is never more than a not-before", () => {
    for (const { first } of US_PATENTS.rows)
      expect(only(decodeUsPatent({ number: String(first) }))?.edtf).toMatch(/^\d{4}(-\d\d-\d\d)?\/\.\.$/);
  });

  it("keeps both years where the tables differ, and one where they agree", () => {
    const years = (number: number) => only(decodeUsPatent({ number: String(number) }));
    expect(years(1_612_699)?.edtf).toBe("1926/..");
    expect(years(1_612_700)).toMatchObject({
      edtf: "1926/..",
      reason: expect.stringContaining("1926 or 1927"),
    });
    expect(years(1_612_789)).toMatchObject({
      edtf: "1926/..",
      reason: expect.stringContaining("1926 or 1927"),
    });
    expect(years(1_612_790)?.edtf).toBe("1927/..");
    expect(years(1_100)?.edtf).toBe("1839/..");
  });

  it("says that the table ends where it does", () => {
    const { statements, notes } = read(decodeUsPatent({ number: "11212952" }));
    expect(statements[0]?.edtf).toBe("2022/..");
    expect(notes).toContainEqual({ is: "table-ends", params: { year: 2022 } });
  });

  it("is refused when it is not in the table, with the table's range", () => {
    expect(decodeUsPatent({ number: "12058943" })).toEqual({
      ok: false,
      error: {
        field: "number",
        rule: "not-in-table",
        received: "12,058,943",
        params: { from: "1", fromYear: 1836, to: "11,544,861", toYear: 2022 },
      },
    });
    expect(lastNumber(US_PATENTS.rows)).toBe(11_544_861);
    expect(ruleOf(decodeUsPatent({ number: "0" }))).toBe("not-in-table");
  });

  it.each([
    ["", "number-missing"],
    ["soon", "number-on-object"],
    ["2,04,837", "number-on-object"],
    ["July 9, 1895", "number-on-object"],
    ["1895-07-09", "number-on-object"],
    ["-5", "number-on-object"],
    ["D 48160", "other-series"],
    ["Re. 12,345", "other-series"],
    ["DRGM 123456", "other-series"],
    ["9".repeat(50), "number-on-object"],
  ])("is refused as %j", (number, rule) => {
    expect(ruleOf(decodeUsPatent({ number }))).toBe(rule);
  });

  it("is doubted when it looks like a year", () => {
    const { notes } = read(decodeUsPatent({ number: "Pat. 1905" }));
    expect(notes).toContainEqual({ is: "looks-like-year", params: { number: 1905 } });
  });
});

describe("a United States design patent", () => {
  it.each([1, 14])("number %i does not exclude 1842, though the table says 1843", (number) => {
    const statement = only(decodeUsDesignPatent({ number: `D${number}` }));
    expect(statement?.edtf).toBe("1842-11-09/..");
    expect(statement?.reason).toContain("1842 or 1843");
  });

  it("number 15 is of 1844", () => {
    expect(only(decodeUsDesignPatent({ number: "Des. 15" }))?.edtf).toBe("1844/..");
  });

  it("rests on memory from 1904 on", () => {
    expect(only(decodeUsDesignPatent({ number: "25038" }))).toMatchObject({ basis: "published" });
    expect(only(decodeUsDesignPatent({ number: "48160" }))).toMatchObject({
      edtf: "1915/..",
      basis: "from-memory",
      reliability: 0.9,
    });
  });
});

describe("a United States trade-mark registration", () => {
  it("is known by the year to 1940 and by milestones after", () => {
    const edtf = (number: string) => only(decodeUsTradeMark({ number }))?.edtf;
    expect(edtf("Reg. No. 8191")).toBe("1881/..");
    expect(edtf("TM 44358")).toBe("1905/..");
    expect(edtf("400000")).toBe("1940/..");
    expect(edtf("700000")).toBe("1948/..");
    expect(edtf("1234567")).toBe("1948/..");
    expect(edtf("2500000")).toBe("1996/..");
  });
});

describe("a British registered design", () => {
  it("has two candidates when the number stands bare", () => {
    const { statements, alternatives } = read(decodeRegisteredDesign({ number: "346644" }));
    expect(statements).toEqual([]);
    expect(alternatives.map(({ edtf }) => edtf)).toEqual(["1880-02-20/..", "1899/.."]);
    expect(alternatives[0]?.reason).toContain("346,644 is of 20 February 1880");
    const between = read(decodeRegisteredDesign({ number: "No 100,000" })).alternatives[0];
    expect(between?.edtf).toBe("1849/..");
    expect(between?.reason).toContain("after 60,220 of 1849 and before 216,821 of 14 February 1868");
  });

  it.each(["Rd. No. 346644", "Regd. 346644", "REGISTERED DESIGN No 346,644", "RD346644"])(
    "has one when the words are those of 1884 on: %s",
    (number) => {
      const { statements, alternatives } = read(decodeRegisteredDesign({ number }));
      expect(statements.map(({ edtf }) => edtf)).toEqual(["1899/.."]);
      expect(alternatives).toEqual([]);
    },
  );

  it("has one when the number is too high for the first register", () => {
    const { statements, notes } = read(decodeRegisteredDesign({ number: "812345" }));
    expect(statements.map(({ edtf }) => edtf)).toEqual(["1936/.."]);
    expect(notes).toContainEqual({ is: "only-one-series" });
  });

  it("keeps both years at the turn of the year", () => {
    const at = (number: string) => only(decodeRegisteredDesign({ number: `Rd ${number}` }))?.edtf;
    expect(at("331385")).toBe("1898/..");
    expect(at("331706")).toBe("1898/..");
    expect(at("331708")).toBe("1899/..");
    // From 1902 to 1910 printed lists differ by up to five hundred.
    expect(at("447548")).toBe("1904/..");
    expect(at("448300")).toBe("1905/..");
  });

  it("is refused beyond 1965", () => {
    expect(ruleOf(decodeRegisteredDesign({ number: "Rd 990000" }))).toBe("not-in-table");
  });
});
