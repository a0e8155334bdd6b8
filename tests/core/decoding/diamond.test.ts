import { describe, expect, it } from "vitest";
import type { Decoded } from "#core/decoding/decoded";
import { decodeDiamond } from "#core/decoding/diamond";
import { keysOf } from "#core/decoding/diamond-table";
import type { DiamondInput } from "#core/decoding/read-diamond";

function read(input: DiamondInput): Decoded {
  const decoded = decodeDiamond(input);
  if (!decoded.ok) throw new Error(`refused by ${decoded.error.rule}`);
  return decoded.value;
}
const dates = (input: DiamondInput) => {
  const { statements, alternatives } = read(input);
  return { sure: statements.map(({ edtf }) => edtf), either: alternatives.map(({ edtf }) => edtf) };
};
const refused = (input: DiamondInput) => {
  const decoded = decodeDiamond(input);
  return decoded.ok ? null : { field: decoded.error.field, rule: decoded.error.rule };
};

describe("a registration diamond", () => {
  it.each([
    ["31 May 1855", { top: "E", right: "31", bottom: "2", left: "E", class: "I" }, "1855-05-31/.."],
    ["26 March 1864", { top: "n", right: "26", bottom: "7", left: "w", class: "1" }, "1864-03-26/.."],
    ["6 July 1871", { top: "6", right: "A", bottom: "I", class: "XII" }, "1871-07-06/.."],
    ["2 December 1864", { top: "N", right: "2", left: "A" }, "1864-12-02/.."],
    ["1 August 1883", { top: "1", right: "K", bottom: "R" }, "1883-08-01/.."],
    ["14 February 1868", { top: "14", right: "X", bottom: "G", class: "IV" }, "1868-02-14/.."],
    ["November 1844, the day worn away", { top: "C", left: "K" }, "1844-11/.."],
    ["1876, nothing else legible", { right: "V" }, "1876/.."],
    ["1849, a parcel but no month", { top: "S", bottom: "5" }, "1849/.."],
  ])("of %s", (_, input, edtf) => {
    expect(dates(input)).toEqual({ sure: [edtf], either: [] });
  });

  it("says series, class and parcel", () => {
    const { notes } = read({ top: "E", right: "31", bottom: "2", left: "E", class: "III" });
    expect(notes).toEqual([
      { is: "diamond-series", params: { series: "1842\u20131867" } },
      { is: "diamond-class", params: { key: "III", goods: "Glass" } },
      { is: "diamond-parcel", params: { parcel: "2" } },
    ]);
  });

  it("is the same for a letter in both series, by where it stands", () => {
    for (const letter of keysOf("year letter", "1868-1883")) {
      const first = Number(dates({ top: letter }).sure[0]?.slice(0, 4));
      expect(dates({ right: letter }).sure).toEqual([`${first + 26}/..`]);
    }
  });

  describe("with an irregularity", () => {
    it.each([
      ["R in 1857", { top: "K", right: "5", left: "R" }, ["1857-08-05/..", "1857-09-05/.."]],
      ["R in 1857 without a day", { top: "K", left: "R" }, ["1857-08/..", "1857-09/.."]],
      ["K in 1860", { top: "Z", right: "12", left: "K" }, ["1860-11-12/..", "1860-12-12/.."]],
    ])("gives both dates: %s", (_, input, either) => {
      const decoded = read(input);
      expect(decoded.alternatives.map(({ edtf }) => edtf)).toEqual(either);
      expect(decoded.statements).toEqual([]);
      expect(decoded.notes.some(({ is }) => is === "irregular")).toBe(true);
    });

    it.each([
      ["R on 20 August 1857, after it was put right", { top: "K", right: "20", left: "R" }, "1857-08-20/.."],
      ["R in another year", { top: "B", right: "5", left: "R" }, "1858-08-05/.."],
      ["K on the 31st, which November has not", { top: "Z", right: "31", left: "K" }, "1860-12-31/.."],
      ["G and W in the first days of March 1878", { top: "6", right: "W", bottom: "G" }, "1878-03-06/.."],
    ])("gives one date: %s", (_, input, edtf) => {
      expect(dates(input)).toEqual({ sure: [edtf], either: [] });
    });

    it.each([
      ["W after 6 March 1878", { top: "7", right: "W", bottom: "G" }],
      ["W with another month", { top: "2", right: "W", bottom: "H" }],
    ])("refuses %s", (_, input) => {
      expect(refused(input)).toEqual({ field: "right", rule: "diamond-year-letter" });
    });
  });

  it.each([
    ["nothing", {}, "top", "diamond-empty"],
    ["letters in the corners of both series", { top: "E", right: "K" }, "diamond", "diamond-mixed"],
    ["a word in a corner", { top: "Rd" }, "top", "diamond-corner"],
    ["no year", { right: "31", left: "E" }, "top", "diamond-year"],
    ["no year of the second series", { top: "3", bottom: "E" }, "right", "diamond-year"],
    ["a letter that no year of the second series has", { right: "Z" }, "right", "diamond-year-letter"],
    ["a letter that no month has", { top: "E", left: "Z" }, "left", "diamond-month-letter"],
    ["31 February", { top: "E", right: "31", left: "G" }, "right", "diamond-day"],
    ["29 February 1855", { top: "E", right: "29", left: "G" }, "right", "diamond-day"],
    ["the 32nd", { top: "E", right: "32" }, "right", "diamond-day"],
    ["class XIV", { top: "E", class: "XIV" }, "class", "diamond-class"],
    ["class 0", { top: "E", class: "0" }, "class", "diamond-class"],
  ])("is refused with %s", (_, input, field, rule) => {
    expect(refused(input)).toEqual({ field, rule });
  });

  it("takes 29 February of a leap year", () => {
    expect(dates({ top: "L", right: "29", left: "G" }).sure).toEqual(["1856-02-29/.."]);
  });
});
